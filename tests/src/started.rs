//! Programs that tests start, and how long they are waited for.

use rustix::process::{Pid, Signal, kill_process_group};
use std::net::TcpListener;
use std::os::unix::process::CommandExt as _;
use std::process::{Child, ChildStdout, Command};
use std::time::Duration;

/// How long anything is waited for.
pub const PATIENCE: Duration = Duration::from_secs(20);
/// How long a window is waited for: on some desktops it waits for a portal first.
pub const STARTING: Duration = Duration::from_secs(60);
/// Size of a phone's window.
pub const PHONE: (u32, u32) = (390, 844);

/// A program that was started, with all it started in turn; ended when it goes.
pub struct Started(Child);

impl Started {
    /// Its process.
    pub fn id(&self) -> u32 {
        self.0.id()
    }

    /// Start a program.
    pub fn new(command: &mut Command) -> Started {
        let name = format!("{}", command.get_program().display());
        let started = command.process_group(0).spawn();
        Started(started.unwrap_or_else(|why| panic!("{name} cannot be started: {why}")))
    }

    /// What it says, if that was piped and not taken yet.
    pub fn said(&mut self) -> Option<ChildStdout> {
        self.0.stdout.take()
    }
}

impl Drop for Started {
    fn drop(&mut self) {
        if let Some(group) = Pid::from_raw(self.0.id() as i32) {
            // It may have ended already, which is as good.
            let _ = kill_process_group(group, Signal::KILL);
        }
        let _ = self.0.wait();
    }
}

/// A port that is free, below those which the system gives to whoever connects: what is
/// free there stays so until it is used.
pub fn free_port() -> u16 {
    let free = |port: &u16| TcpListener::bind(("127.0.0.1", *port)).is_ok();
    let mut ports = (0..1000).map(|_| fastrand::u16(10_000..32_000));
    ports.find(free).expect("a free port")
}
