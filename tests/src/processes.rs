//! Processes as Linux tells of them in `/proc`.

use std::ffi::OsStr;
use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::Command;

/// All that run now.
pub fn all() -> impl Iterator<Item = u32> {
    let found = fs::read_dir("/proc").expect("Linux").flatten();
    found.filter_map(|found| found.file_name().to_str()?.parse().ok())
}

/// Fields of `/proc/<id>/stat` after the name in brackets: the first is the state.
pub fn stat(id: u32) -> Option<Vec<String>> {
    let stat = fs::read_to_string(format!("/proc/{id}/stat")).ok()?;
    let rest = stat.rsplit_once(')')?.1;
    Some(rest.split_whitespace().map(str::to_string).collect())
}

/// Those a process began, and those they began.
pub fn under(root: u32) -> Vec<u32> {
    let parent = |id: &u32| stat(*id)?[1].parse::<u32>().ok();
    let above = |id: u32| std::iter::successors(parent(&id), parent);
    all()
        .filter(|id| above(*id).any(|above| above == root))
        .collect()
}

/// Whether a process runs a program; one that has ended and is not yet cleared away does not.
pub fn runs(id: u32, program: &Path) -> bool {
    fs::read_link(format!("/proc/{id}/exe")).is_ok_and(|exe| exe == program)
}

/// Run one test of this program in a process of its own, with a variable set, and give what it told with
/// [`tell`].
pub fn alone(test: &str, variable: &str, value: impl AsRef<OsStr>) -> String {
    let output = Command::new(std::env::current_exe().expect("this program"))
        .args(["--exact", test, "--nocapture"])
        .env(variable, value)
        .output()
        .expect("it runs");
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success(), "{text}");
    let told = text.lines().find_map(|line| line.strip_prefix("said "));
    told.expect("it tells something").to_string()
}

/// Tell the process that runs this test with [`alone`].
pub fn tell(what: &str) {
    // In one piece, on a line of its own.
    let line = format!("\nsaid {what}\n");
    let told = std::io::stdout().lock().write_all(line.as_bytes());
    told.expect("it is heard");
}

/// The most memory this process has held at a time, in MiB.
pub fn most_memory() -> u64 {
    let status = fs::read_to_string("/proc/self/status").expect("Linux");
    let most = status
        .lines()
        .find_map(|line| line.strip_prefix("VmHWM:")?.strip_suffix(" kB"));
    let most: u64 = most.expect("it is told").trim().parse().expect("a number");
    most / 1024
}
