//! Photos that were chosen and left are removed, and no others.

use super::*;

#[test]
fn photos_chosen_and_left_are_swept_and_no_others() {
    let _alone = alone();
    let folder = quick();
    let root = folder.path();
    lay(root, "a", record("A", &[]).text().as_bytes());
    let mut service = serve(root.join("data"));
    let photos = root.join("data/throws/a/photos");
    let keep =
        |service: &mut Service, n: usize| service.keep_photo("a", Ok(PHOTOS[n].clone()), START);
    let names = || -> BTreeSet<String> {
        let found = fs::read_dir(&photos).unwrap().flatten();
        found
            .map(|found| found.file_name().into_string().unwrap())
            .collect()
    };
    let called = |n: usize| format!("{}.jpg", hash(&PHOTOS[n]));
    keep(&mut service, 0).unwrap();
    service.act("a", &picture(0), START).unwrap();
    service.act("a", &Request::Undo, START).unwrap();
    keep(&mut service, 1).unwrap();
    // Half of one, from an app that died; and what is none of ours.
    fs::write(photos.join(format!("{}.new", called(5))), "half").unwrap();
    fs::write(photos.join("mine.txt"), "mine").unwrap();
    keep(&mut service, 2).unwrap();
    let meant = [called(0), called(2), "mine.txt".to_string()];
    assert_eq!(names(), BTreeSet::from(meant));
    // One whose bytes went bad is written anew.
    fs::write(photos.join(called(2)), "bad").unwrap();
    service.act("a", &picture(2), START).unwrap();
    keep(&mut service, 2).unwrap();
    assert_eq!(fs::read(photos.join(called(2))).unwrap(), PHOTOS[2]);
}
