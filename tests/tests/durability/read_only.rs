//! A data folder that may only be read.

use super::failing_disk::{goes_on, lies};
use super::*;

/// Everything can be looked at, nothing is written, and that is told.
fn look_only(data: &Path) {
    let before = lies(data);
    let mut service = serve(data);
    let hello = service.hello(START);
    assert_eq!(hello.problem.unwrap().code, "disk");
    let row = &hello.shelf.rows[0];
    assert!(row.head.is_some(), "it can be read");
    for request in [note("no"), Request::Undo] {
        let refused = service.act(&row.id, &request, START).unwrap_err();
        assert_eq!(refused.code, "disk");
        assert!(refused.said.contains("may not"), "{refused:?}");
    }
    let id = row.id.clone();
    for command in [ShelfCommand::Demo, ShelfCommand::Delete { id }] {
        assert_eq!(
            service.shelf_command(&command, START).unwrap_err().code,
            "disk"
        );
    }
    assert_eq!(
        service.set_prefs(Prefs::default(), START).unwrap_err().code,
        "disk"
    );
    assert_eq!(lies(data), before);
}

#[test]
fn part_look_only() {
    let _alone = alone();
    if let Some((folder, _)) = asked("read_only::part_look_only") {
        look_only(&folder);
        say("said nothing written, all told, all to be seen");
    }
}

#[test]
fn a_folder_that_may_only_be_read() {
    let _alone = alone();
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    claimed(&data).begin(&id(), &record(1, 5)).unwrap();
    let nobody = [
        "setpriv",
        "--reuid=65534",
        "--regid=65534",
        "--clear-groups",
    ];
    let root = rustix::process::geteuid().is_root();
    let open =
        "chmod -R a+rX \"$1\" && chmod a-w \"$1\" \"$1\"/* \"$1\"/*/* && chmod a-w \"$1\"/lock";
    let opened = process::Command::new("sh")
        .args(["-c", open, "sh"])
        .arg(&data)
        .status()
        .unwrap();
    assert!(opened.success());
    fs::set_permissions(
        folder.path(),
        std::os::unix::fs::PermissionsExt::from_mode(0o755),
    )
    .unwrap();
    let bits = if root {
        run(part("read_only::part_look_only", &data, 0, &nobody))
    } else {
        run(part("read_only::part_look_only", &data, 0, &[]))
    };
    match bits {
        Some(said) => println!("permission bits, not as root: {said}"),
        None => println!("permission bits: not run, no other user to be here"),
    }
    let mount =
        "mount --bind \"$1\" \"$1\" && mount -o remount,bind,ro \"$1\" && shift && exec \"$@\"";
    let place = data.to_str().unwrap();
    let bound = ["unshare", "--mount", "sh", "-c", mount, "sh", place];
    match run(part("read_only::part_look_only", &data, 0, &bound)) {
        Some(said) => println!("a read-only mount: {said}"),
        None => println!("a read-only mount: not run, nothing may be mounted here"),
    }
    println!("EROFS at every operation: see a_fault_at_every_operation");
    let again = process::Command::new("chmod")
        .args(["-R", "u+w"])
        .arg(&data)
        .status();
    assert!(again.unwrap().success());
    goes_on(&data, &[lies(&data)], "writable again");
}
