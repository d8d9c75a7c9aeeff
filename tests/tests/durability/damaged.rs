//! Files that were cut, or whose bits or bytes were changed.

use super::*;

/// What became of a broken file.
#[derive(Debug, PartialEq, Eq, Clone, Copy)]
enum Came {
    /// Nothing was left out, and everything is there, or (cut between two lines) `less`.
    Whole { less: bool },
    /// The end was left out, a copy kept, and both told.
    Cut,
    /// Refused and told, and left untouched.
    Refused,
}

/// Open a throw whose file was broken, see that what stands is the beginning of what
/// there was, write to it, and open it again.
fn mended(folder: &Path, broken: &[u8], was: &Journal, what: &str) -> Came {
    static WORDS: LazyLock<Words> = LazyLock::new(Words::english);
    let file = lay(folder, broken);
    let store = claimed(folder);
    let mut opened = match store.open(&id(), START) {
        Ok(opened) => opened,
        Err(error) => {
            assert!(
                matches!(error, StoreError::Damaged { .. }),
                "{what}: {error:?}"
            );
            let problem = message(&WORDS, &error);
            let place = file.to_str().unwrap();
            let output = format!("{} {}", problem.said, problem.next);
            assert!(output.contains(place), "{what}: {output}");
            assert_eq!(fs::read(&file).unwrap(), broken, "{what}: touched");
            assert_eq!(fs::read_dir(file.parent().unwrap()).unwrap().count(), 1);
            return Came::Refused;
        }
    };
    assert!(!opened.torn() && !opened.held(), "{what}");
    let kept = opened.journal.text();
    assert!(
        was.text().starts_with(&kept),
        "{what}: something else is kept"
    );
    let came = match &opened.mended {
        Some(mended) => {
            assert_eq!(fs::read(&mended.copy).unwrap(), broken, "{what}: the copy");
            let left = fs::read(&file).unwrap();
            assert_eq!(
                left.len() as u64 + mended.bytes,
                broken.len() as u64,
                "{what}"
            );
            assert!(broken.starts_with(&left), "{what}");
            Came::Cut
        }
        None => Came::Whole {
            less: kept.trim_end() != was.text().trim_end(),
        },
    };
    let before = opened.journal.len();
    for text in ["after", "and again"] {
        let Request::Act { action } = note(text) else {
            unreachable!()
        };
        let entry = opened.journal.propose(&action, START).unwrap();
        store.append(&id(), &mut opened, &entry).unwrap();
        opened.accept(entry).unwrap();
    }
    drop(store);
    let again = claimed(folder).open(&id(), START).unwrap();
    assert!(again.mended.is_none(), "{what}: torn a second time");
    assert_eq!(again.journal.len(), before + 2, "{what}");
    assert_eq!(again.journal.throw(), opened.journal.throw(), "{what}");
    came
}

#[test]
fn cut_at_every_byte() {
    let _alone = alone();
    let folder = quick();
    let mut cases = BTreeMap::new();
    let mut lost = 0;
    let mut try_cuts = |journal: &Journal, from: usize| {
        let text = journal.text();
        // Where each entry's line ends, without its newline.
        let ends: Vec<usize> = text.match_indices('\n').map(|(at, _)| at).collect();
        for cut in from..=text.len() {
            let came = mended(
                folder.path(),
                &text.as_bytes()[..cut],
                journal,
                &format!("cut at {cut}"),
            );
            *cases.entry(format!("{came:?}")).or_insert(0) += 1;
            let whole = ends.iter().skip(1).filter(|end| **end <= cut).count();
            let kept = match came {
                Came::Refused => 0,
                _ => {
                    let read = claimed(folder.path()).open(&id(), START).unwrap();
                    read.journal.len() - 2
                }
            };
            lost += whole - kept;
        }
    };
    try_cuts(&record(7, 12), 0);
    let large = record(11, 400);
    let text = large.text();
    let from = text.rmatch_indices('\n').nth(6).unwrap().0;
    try_cuts(&large, from);
    let all: i32 = cases.values().sum();
    println!("cut at every byte: {all} cases {cases:?}, whole entries lost: {lost}");
    assert!(all > 2000 && lost == 0);
}

#[test]
fn every_bit_flipped() {
    let _alone = alone();
    let journal = record(3, 7);
    let bytes = journal.text().into_bytes();
    let halves = [0..bytes.len() / 2, bytes.len() / 2..bytes.len()];
    let tried = std::thread::scope(|scope| {
        let working = halves.map(|half| {
            let (bytes, journal) = (&bytes, &journal);
            scope.spawn(move || {
                let folder = quick();
                let mut cases = BTreeMap::new();
                for (byte, bit) in half.flat_map(|byte| (0..8).map(move |bit| (byte, bit))) {
                    let mut broken = bytes.clone();
                    broken[byte] ^= 1 << bit;
                    let came = mended(
                        folder.path(),
                        &broken,
                        journal,
                        &format!("bit {bit} of byte {byte}"),
                    );
                    assert_ne!(came, Came::Whole { less: true }, "bit {bit} of byte {byte}");
                    *cases.entry(format!("{came:?}")).or_insert(0) += 1;
                }
                cases
            })
        });
        working.map(|half| half.join().unwrap())
    });
    let mut cases: BTreeMap<String, usize> = BTreeMap::new();
    for (came, count) in tried.into_iter().flatten() {
        *cases.entry(came).or_default() += count;
    }
    let all: usize = cases.values().sum();
    println!("every bit of a file flipped: {all} cases {cases:?}, lost untold: 0");
    assert_eq!(all, bytes.len() * 8);
}

#[test]
fn bytes_of_a_large_file_changed() {
    let _alone = alone();
    let journal = record(5, 500);
    let bytes = journal.text().into_bytes();
    let folder = quick();
    let mut chance = Chance(17);
    let mut cases = BTreeMap::new();
    for case in 0..240 {
        let mut broken = bytes.clone();
        for _ in 0..1 + chance.below(3) {
            let near_the_end = case % 3 == 0;
            let from = if near_the_end { bytes.len() - 400 } else { 0 };
            let at = from + chance.below((bytes.len() - from) as u64) as usize;
            broken[at] = chance.draw() as u8;
        }
        if case % 5 == 0 {
            // What a power cut leaves of pages never written.
            let from = broken.len() - chance.below(600) as usize;
            broken[from..].fill(0);
        }
        let came = mended(folder.path(), &broken, &journal, &format!("case {case}"));
        *cases.entry(format!("{came:?}")).or_insert(0) += 1;
    }
    println!("random bytes of a large file changed: 240 cases {cases:?}, lost untold: 0");
}
