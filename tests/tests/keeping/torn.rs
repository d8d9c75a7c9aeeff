//! A torn throw is repaired before another takes its place.

use super::*;

#[test]
fn a_torn_throw_is_mended_before_another_takes_its_place() {
    let _alone = alone();
    let folder = quick();
    let root = folder.path();
    let whole = record("A", &[note("one")]).text().into_bytes();
    let torn = &whole[..whole.len() - 5];
    lay(root, "a", torn);
    let file = root.join("data/throws/a/throw.jsonl");
    let full = Arc::new(AtomicBool::new(true));
    let is_full = Arc::clone(&full);
    let disk = Tapped::with(move || match is_full.load(Ordering::SeqCst) {
        true => Err(io::ErrorKind::StorageFull.into()),
        false => Ok(()),
    });
    let mut service = serve_on(root.join("data"), disk);
    let row = service.hello(START).shelf.rows[0].clone();
    assert_eq!(row.problem.map(|p| p.code).as_deref(), Some("torn-left"));
    let brought = root.join("brought");
    fs::write(&brought, &whole).unwrap();
    let found = read_throw(&DesktopDisk, &brought.into());
    let view = service.import(found, START).unwrap();
    assert_eq!(view.buttons[0].choice, ImportChoice::TakeBrought);
    let take =
        |service: &mut Service| service.decide_import(&ImportChoice::TakeBrought, view.file, START);
    assert_eq!(take(&mut service).unwrap_err().code, "torn-left");
    let refused = service.act("a", &note("later"), START).unwrap_err();
    assert_eq!(refused.code, "torn-left");
    assert_eq!(fs::read(&file).unwrap(), torn, "untouched so far");
    full.store(false, Ordering::SeqCst);
    take(&mut service).unwrap();
    let beside = fs::read_dir(file.parent().unwrap()).unwrap();
    let mut beside = beside.map(|found| fs::read(found.unwrap().path()).unwrap());
    assert!(beside.any(|bytes| bytes == torn), "the torn file is kept");
    assert_eq!(fs::read(&file).unwrap(), whole);
    assert!(service.act("a", &note("later"), START).is_ok());
}
