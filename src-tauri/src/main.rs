//! The program: it opens the window, or answers on the command line if it has arguments.

// A window on Windows should not bring a console along.
#![cfg_attr(all(windows, not(debug_assertions)), windows_subsystem = "windows")]

use std::process::ExitCode;

fn main() -> ExitCode {
    match lapwork_shell::headless::answer_arguments() {
        Some(code) => code,
        None => {
            lapwork_shell::run();
            ExitCode::SUCCESS
        }
    }
}
