//! The data folder on a real disk.

use super::*;
use crate::desktop::{self, DesktopDisk, read_throw, write_throw};
use lapwork_core::demo;
use lapwork_core::show::Prefs;
use std::fs::{self, File};
use std::path::Path;

fn claimed(folder: &Path) -> Store {
    let mut store = desktop::store(folder.to_path_buf());
    assert!(store.claim().unwrap());
    store
}

#[test]
fn an_id_cannot_leave_the_folder() {
    for bad in [
        "", ".", "..", "../x", "a/b", "a\\b", "A", "é", "a b", "a\0", "/etc", ".new-a",
    ] {
        assert!(
            matches!(ThrowId::parse(bad), Err(StoreError::BadId)),
            "{bad:?}"
        );
    }
    assert!(ThrowId::parse(&"a".repeat(65)).is_err());
    assert_eq!(ThrowId::parse("0a-9z").unwrap().as_str(), "0a-9z");
}

#[test]
fn only_one_may_write_and_the_next_may_once_it_is_gone() {
    let folder = tempfile::tempdir().unwrap();
    let first = claimed(folder.path());
    let mut second = desktop::store(folder.path().to_path_buf());
    assert!(matches!(second.claim(), Err(StoreError::Locked)));
    let id = ThrowId::parse("a").unwrap();
    let refused = second.begin(&id, &demo::throw(0));
    assert!(matches!(refused, Err(StoreError::Locked)));
    assert!(!second.knows(&id));
    drop(first);
    assert!(second.claim().unwrap());
    assert!(!second.claim().unwrap());
}

#[test]
fn a_throw_half_begun_is_cleared_and_never_listed() {
    let folder = tempfile::tempdir().unwrap();
    let half = folder.path().join("throws/.new-a");
    fs::create_dir_all(&half).unwrap();
    fs::write(half.join(THROW_FILE), "{\"lap").unwrap();
    let store = claimed(folder.path());
    assert!(!half.exists());
    assert!(store.ids(Place::Throws).unwrap().is_empty());
}

#[test]
fn a_throw_begun_is_whole_and_no_other_of_its_name_is_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let store = claimed(folder.path());
    let (id, journal) = (ThrowId::parse("a").unwrap(), demo::throw(0));
    store.begin(&id, &journal).unwrap();
    assert_eq!(store.ids(Place::Throws).unwrap(), std::slice::from_ref(&id));
    let kept = fs::read_to_string(store.throw_file(Place::Throws, &id)).unwrap();
    assert_eq!(kept, journal.text());
    store.carry(&id, Place::Throws, Place::Deleted).unwrap();
    assert!(store.begin(&id, &journal).is_err());
    assert!(store.ids(Place::Throws).unwrap().is_empty());
}

#[test]
fn a_file_too_large_is_not_read() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(THROW_FILE);
    let file = File::create(&path).unwrap();
    file.set_len(MOST_BYTES + 1).unwrap();
    assert!(matches!(
        read_throw(&path.as_path().into()),
        Err(StoreError::TooLarge { .. })
    ));
    file.set_len(MOST_BYTES).unwrap();
    assert!(matches!(
        read_throw(&path.as_path().into()),
        Err(StoreError::Damaged { .. })
    ));
}

#[test]
fn a_throw_is_never_written_over_a_file() {
    let folder = tempfile::tempdir().unwrap();
    let journal = demo::throw(0);
    let written = write_throw(&folder.path().into(), &journal).unwrap();
    assert!(read_throw(&folder.path().into()).is_ok());
    fs::write(&written, "mine").unwrap();
    assert!(write_throw(&folder.path().into(), &journal).is_err());
    assert!(write_throw(&written, &journal).is_err());
    assert_eq!(fs::read(&written).unwrap(), b"mine");
}

#[test]
fn settings_are_kept_whole_and_broken_ones_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let store = claimed(folder.path());
    assert_eq!(store.settings().unwrap(), None);
    let prefs = Prefs {
        text: 140,
        ..Prefs::default()
    };
    store.keep_settings(&prefs).unwrap();
    assert_eq!(store.settings().unwrap().as_ref(), Some(&prefs));
    // Settings from before a language could be chosen.
    let old = r#"{"ruler":{"system":"metric","fraction":"eighth","metric":"cm"},"text":125,"theme":"dark"}"#;
    fs::write(folder.path().join("settings.json"), old).unwrap();
    let read = store.settings().unwrap().unwrap();
    assert_eq!((read.text, read.language), (125, None));
    fs::write(folder.path().join("settings.json"), "{").unwrap();
    assert!(matches!(store.settings(), Err(StoreError::Settings { .. })));
    // Larger than settings can be, it is not read to its end.
    let file = File::create(folder.path().join("settings.json")).unwrap();
    file.set_len(1 << 40).unwrap();
    assert!(matches!(store.settings(), Err(StoreError::Settings { .. })));
}

#[cfg(unix)]
#[test]
fn nobody_waits_at_the_end_of_a_pipe() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe.jsonl");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.unwrap().success());
    let throw = read_throw(&pipe.as_path().into());
    assert!(matches!(throw, Err(StoreError::Disk { .. })), "{throw:?}");
    let photo = crate::import::read_photo(&DesktopDisk, &pipe.as_path().into());
    assert!(matches!(photo, Err(StoreError::Disk { .. })), "{photo:?}");
    assert!(matches!(
        read_throw(&"/dev/zero".into()),
        Err(StoreError::Disk { .. })
    ));
    // Nor where a throw's own file should be.
    let store = claimed(folder.path());
    let id = ThrowId::parse("a").unwrap();
    let own = store.throw_file(Place::Throws, &id);
    fs::create_dir(own.parent().unwrap()).unwrap();
    fs::rename(&pipe, &own).unwrap();
    let throw = store.open(&id, 0);
    assert!(matches!(throw, Err(StoreError::Disk { .. })), "{throw:?}");
}

/// A throw in a claimed folder, and its file.
#[cfg(unix)]
fn one_throw(folder: &Path) -> (Store, ThrowId, std::path::PathBuf) {
    let store = claimed(folder);
    let id = ThrowId::parse("a").unwrap();
    store.begin(&id, &demo::throw(0)).unwrap();
    let file = folder.join("throws/a").join(THROW_FILE);
    (store, id, file)
}

#[cfg(unix)]
#[test]
fn what_only_the_maker_may_read_stays_so_and_a_link_stays_a_link() {
    use std::os::unix::fs::{PermissionsExt as _, symlink};
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    let folder = tempfile::tempdir().unwrap();
    let elsewhere = tempfile::tempdir().unwrap();
    let (store, id, file) = one_throw(folder.path());
    let settings = folder.path().join("settings.json");
    store.keep_settings(&Prefs::default()).unwrap();
    // Both lie elsewhere, for nobody else to read.
    let mut real = Vec::new();
    for path in [&file, &settings] {
        let there = elsewhere.path().join(path.file_name().unwrap());
        fs::copy(path, &there).unwrap();
        fs::set_permissions(&there, fs::Permissions::from_mode(0o600)).unwrap();
        fs::remove_file(path).unwrap();
        symlink(&there, path).unwrap();
        real.push(there);
    }
    drop(store);
    let store = claimed(folder.path());
    let mut opened = store.open(&id, 0).unwrap();
    let entry = opened.journal.propose_undo(9).unwrap();
    // The first entry of a session writes the file anew.
    store.append(&id, &mut opened, &entry).unwrap();
    opened.accept(entry).unwrap();
    let copies = store
        .replace(&id, &opened.journal, &[("here", b"as it was")], 5)
        .unwrap();
    let prefs = Prefs {
        text: 150,
        ..Prefs::default()
    };
    store.keep_settings(&prefs).unwrap();
    for (path, there) in [&file, &settings].into_iter().zip(&real) {
        assert_eq!(&fs::read_link(path).unwrap(), there);
        assert_eq!(mode(there), 0o600, "{there:?}");
    }
    assert_eq!(fs::read_to_string(&real[0]).unwrap(), opened.journal.text());
    assert_eq!(store.settings().unwrap(), Some(prefs));
    assert_eq!(mode(copies[0].as_ref()), 0o600);
    // Nothing is left where it was written first.
    assert_eq!(fs::read_dir(elsewhere.path()).unwrap().count(), 2);
    // A link that leads nowhere gives way to a file.
    fs::remove_file(&real[1]).unwrap();
    store.keep_settings(&Prefs::default()).unwrap();
    assert!(fs::symlink_metadata(&settings).unwrap().is_file());
}

/// A pipe in the place of a file is refused; nobody waits for its other end.
#[cfg(target_os = "linux")]
#[test]
fn a_pipe_in_the_place_of_a_file_holds_nothing_up() {
    use rustix::fs::{CWD, FileType, Mode, mknodat};
    use std::os::unix::fs::FileTypeExt as _;
    let pipe = |path: &Path| {
        let _ = fs::remove_file(path);
        mknodat(CWD, path, FileType::Fifo, Mode::RUSR | Mode::WUSR, 0).unwrap();
        assert!(fs::metadata(path).unwrap().file_type().is_fifo());
    };
    let folder = tempfile::tempdir().unwrap();
    let (store, id, file) = one_throw(folder.path());
    let photo = lapwork_core::cloth::photos::PhotoId::parse(&"ab".repeat(32)).unwrap();
    store.keep_photo(&id, &photo, b"a photo").unwrap();
    let mut opened = store.open(&id, 0).unwrap();
    let shown = folder
        .path()
        .join(format!("throws/a/photos/{}.jpg", photo.as_str()));
    for path in [&file, &folder.path().join("settings.json"), &shown] {
        pipe(path);
    }
    let (sent, done) = std::sync::mpsc::channel();
    let folder = folder.path().to_path_buf();
    let lock = folder.join("lock");
    std::thread::spawn(move || {
        assert!(matches!(store.settings(), Err(StoreError::Settings { .. })));
        assert!(matches!(
            store.photo(&id, &photo),
            Err(StoreError::Disk { .. })
        ));
        assert!(matches!(
            store.read(Place::Throws, &id),
            Err(StoreError::Disk { .. })
        ));
        assert!(matches!(store.open(&id, 0), Err(StoreError::Disk { .. })));
        let entry = opened.journal.propose_undo(9).unwrap();
        assert!(store.append(&id, &mut opened, &entry).is_err());
        drop(store);
        pipe(&lock);
        let mut next = desktop::store(folder);
        assert!(matches!(next.claim(), Err(StoreError::Disk { .. })));
        // The settings are written over a pipe, as over any other file.
        fs::remove_file(&lock).unwrap();
        next.claim().unwrap();
        next.keep_settings(&Prefs::default()).unwrap();
        assert_eq!(next.settings().unwrap(), Some(Prefs::default()));
        sent.send(()).unwrap();
    });
    let waited = done.recv_timeout(std::time::Duration::from_secs(60));
    assert_eq!(waited, Ok(()), "a pipe was waited for");
}
