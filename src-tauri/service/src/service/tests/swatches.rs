//! The photos of fabrics go where their throw goes.

use super::*;
use crate::import;
use crate::photos;
use image::{ImageFormat, Rgb, RgbImage};
use lapwork_core::show::{Export, ImportChoice};
use std::io::Cursor;

/// A photo as the shell keeps one.
fn photo(shade: u8) -> Vec<u8> {
    let mut png = Cursor::new(Vec::new());
    let picture = RgbImage::from_pixel(60, 40, Rgb([shade, 90, 10]));
    picture.write_to(&mut png, ImageFormat::Png).unwrap();
    photos::shrink(png.get_ref()).unwrap()
}

/// Give the first fabric this photo, or none; gives the photo's name.
fn give(service: &mut Service, id: &str, bytes: &[u8]) -> String {
    let name = service.keep_photo(id, Ok(bytes.to_vec()), 5).unwrap();
    let snapshot = service.snapshot(id, 5).unwrap();
    let throw = snapshot.journal().throw();
    let (mut prints, denims) = (throw.prints.clone(), throw.denims.clone());
    prints[0].photo = lapwork_core::cloth::photos::PhotoId::parse(&name);
    let action = Command::SetCloth { prints, denims };
    service.act(id, &Request::Act { action }, 5).unwrap();
    name
}

fn exported(service: &mut Service, id: &str) -> Vec<u8> {
    let files = service.export(id, &Export::Throw, 6).unwrap();
    files.into_iter().next().unwrap().bytes
}

/// Import a file so; gives the throw, and what of the file was not read.
fn taken(service: &mut Service, file: &[u8], choice: &ImportChoice) -> (String, u64) {
    let found = import::read(&DiskPath::from("copy.jsonl"), file.to_vec()).unwrap();
    let left_out = found.left_out;
    let view = service.import(Ok(found), 7).unwrap();
    let taken = service.decide_import(choice, view.file, 7).unwrap();
    (taken.id.unwrap(), left_out)
}

#[test]
fn the_photo_of_a_fabric_goes_with_its_throw_and_comes_back() {
    let (folder, other) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    let (mut here, id, file) = begun(&folder);
    let without = exported(&mut here, &id);
    assert_eq!(without, fs::read(&file).unwrap(), "no photo, no line");
    let first = photo(200);
    let name = give(&mut here, &id, &first);
    let sent = exported(&mut here, &id);
    assert!(sent.starts_with(&fs::read(&file).unwrap()));

    let mut there = service(&other);
    let (copy, left_out) = taken(&mut there, &sent, &ImportChoice::Add);
    assert_eq!((there.photo(&copy, &name), left_out), (Some(first), 0));
    let kept = other.path().join("throws").join(&copy).join("throw.jsonl");
    assert_eq!(fs::read(kept).unwrap(), fs::read(&file).unwrap());
    assert_eq!(exported(&mut there, &copy), sent, "and on, to the byte");

    // There the fabric gets another photo, which comes back with the throw.
    let second = photo(100);
    let other_name = give(&mut there, &copy, &second);
    let back = exported(&mut there, &copy);
    let (again, _) = taken(&mut here, &back, &ImportChoice::TakeBrought);
    assert_eq!(again, id);
    assert_eq!(here.photo(&id, &other_name), Some(second.clone()));
    // A copy of its own has it too.
    let (own, _) = taken(&mut here, &back, &ImportChoice::KeepBoth);
    assert_eq!(here.photo(&own, &other_name), Some(second));
}

#[test]
fn photos_in_a_file_are_taken_only_for_what_they_are() {
    let (folder, other) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    let (mut here, id, _) = begun(&folder);
    let name = give(&mut here, &id, &photo(200));
    let record = here.snapshot(&id, 6).unwrap().journal().text().into_bytes();
    let parsed = lapwork_core::cloth::photos::PhotoId::parse(&name).unwrap();

    // With a place in it, or a comment: as a camera writes it, and not as Lapwork keeps one.
    for segment in [0xE1, 0xFE] {
        let mut placed = photo(200);
        placed.splice(2..2, [0xFF, segment, 0, 6, 1, 2, 3, 4]);
        assert!(!photos::is_small(&placed), "{segment:x}");
        let named = photos::name(&placed).unwrap();
        let file = import::with_photos(record.clone(), &[(named, placed)]);
        let found = import::read(&DiskPath::from("x"), file).unwrap();
        assert!(found.photos.is_empty());
    }
    // Cut short, larger than any that is kept, or no photo at all.
    let whole = photo(200);
    assert!(photos::is_small(&whole));
    assert!(!photos::is_small(&whole[..whole.len() - 9]));
    assert!(!photos::is_small(b"GIF89a") && !photos::is_small(&[]));
    let mut large = Cursor::new(Vec::new());
    let picture = RgbImage::new(1601, 2);
    picture.write_to(&mut large, ImageFormat::Jpeg).unwrap();
    assert!(!photos::is_small(large.get_ref()));
    // Under another's name.
    let file = import::with_photos(record.clone(), &[(parsed, photo(3))]);
    let mut there = service(&other);
    let (copy, left_out) = taken(&mut there, &file, &ImportChoice::Add);
    assert_eq!((there.photo(&copy, &name), left_out), (None, 0));

    // A line of photos that breaks off is told, and the record is there.
    let sent = exported(&mut here, &id);
    let torn = &sent[..sent.len() - 9];
    let found = import::read(&DiskPath::from("x"), torn.to_vec()).unwrap();
    assert_eq!(found.left_out as usize, torn.len() - record.len());
    assert_eq!(found.journal.text().as_bytes(), record);
    // A Lapwork that does not know the line has the record too, and says what it left out.
    let older = Journal::read(&sent).unwrap();
    assert_eq!(older.journal.text().as_bytes(), record);
    assert_eq!(older.sound, record.len());
}

/// A photo that no fabric has is not kept for it.
#[test]
fn a_photo_of_no_fabric_is_not_kept() {
    let (folder, other) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    let (mut here, id, _) = begun(&folder);
    let record = exported(&mut here, &id);
    let stray = photo(1);
    let name = photos::name(&stray).unwrap();
    let file = import::with_photos(record, &[(name.clone(), stray)]);
    let mut there = service(&other);
    let (copy, _) = taken(&mut there, &file, &ImportChoice::Add);
    assert_eq!(there.photo(&copy, name.as_str()), None);
}
