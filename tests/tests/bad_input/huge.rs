//! Huge files take no more memory and time than they must.

use super::*;
use lapwork_tests::processes::{alone, most_memory, tell};

const HUGE: &str = "LAPWORK_HUGE";

/// Reads one file and says how much memory it took at most.
#[test]
fn part_huge() {
    let Some(path) = std::env::var_os(HUGE).map(PathBuf::from) else {
        return;
    };
    let began = Instant::now();
    let came = match read_throw(&path.as_path().into()) {
        Ok(opened) => format!("{} entries", opened.journal.len()),
        Err(StoreError::TooLarge { .. }) => "too large".to_string(),
        Err(StoreError::Damaged { how, .. }) => format!("{how:?}"),
        Err(error) => panic!("{error:?}"),
    };
    let took = began.elapsed().as_millis();
    tell(&format!("{came}|{}|{took}", most_memory()));
}

/// What came of a file, the most memory in MiB, and the milliseconds it took.
fn huge(path: &Path) -> (String, u64, u64) {
    let said = alone("huge::part_huge", HUGE, path);
    let parts: Vec<&str> = said.split('|').collect();
    let number = |i: usize| parts[i].parse::<u64>().unwrap();
    (parts[0].to_string(), number(1), number(2))
}

#[test]
fn huge_files_take_no_more_than_they_must() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("throw.jsonl");
    let sparse = |length: u64| File::create(&path).unwrap().set_len(length).unwrap();
    sparse(1 << 30);
    let (came, peak, took) = huge(&path);
    println!("a file of 1 GiB: {came}, peak {peak} MiB, {took} ms");
    assert!(came == "too large" && peak < 200 && took < 5000);
    sparse(MOST_BYTES);
    let (came, peak, took) = huge(&path);
    println!("64 MiB of zeros: {came}, peak {peak} MiB, {took} ms");
    assert!(peak < 300 && took < 20_000);
    let good = kept("every-event-1.jsonl");
    let after = |filler: &[u8]| {
        let mut file = File::create(&path).unwrap();
        file.write_all(&good).unwrap();
        let mut left = MOST_BYTES as usize - good.len();
        while left > 0 {
            let n = filler.len().min(left);
            file.write_all(&filler[..n]).unwrap();
            left -= n;
        }
    };
    let fillers: [(&str, Vec<u8>); 4] = [
        ("newlines", b"\n".repeat(4096)),
        ("brackets", b"[".repeat(4096)),
        ("beginnings of entries", b"{\"n\":".repeat(1000)),
        (
            "short lines",
            b"{\"n\":2,\"at\":0,\"undo\":1,\"crc\":\"00000000\"}\n".repeat(100),
        ),
    ];
    for (what, filler) in fillers {
        after(&filler);
        let (came, peak, took) = huge(&path);
        println!("64 MiB, {what} after a good record: {came}, peak {peak} MiB, {took} ms");
        assert!(peak < 300 && took < 60_000, "{what}");
    }
    // As many sound entries as a file holds.
    let mut text = String::from_utf8(good).unwrap();
    let mut n = text.lines().count();
    while text.len() < 16 << 20 {
        text += &with_sum(&format!(
            "{{\"n\":{n},\"at\":0,\"do\":[{{\"spares-counted\":{{\"spares\":3}}}}]"
        ));
        n += 1;
    }
    fs::write(&path, &text).unwrap();
    let (came, peak, took) = huge(&path);
    println!("16 MiB of sound entries: {came}, peak {peak} MiB, {took} ms");
    assert!(came.ends_with("entries") && peak < 1000 && took < 60_000);
}
