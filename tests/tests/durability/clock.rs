//! A clock that is set back and forth.

use super::*;

#[test]
fn a_clock_set_back_and_forth() {
    let _alone = alone();
    let folder = quick();
    claimed(folder.path()).begin(&id(), &record(4, 1)).unwrap();
    let mut journal = (*read(folder.path()).0.journal).clone();
    let mut chance = Chance(23);
    let year = 31_557_600_000;
    let looks: Vec<Value> = vec![
        json!({"see": "work", "station": null, "batch": null}),
        json!({"see": "bench", "chosen": [0, 0, 1, 1]}),
        json!({"see": "history", "most": 500}),
        json!({"see": "gather"}),
    ];
    let mut cases = 0;
    for round in 0..60 {
        let mut service = serve(folder.path());
        assert_eq!(service.hello(START).problem, None);
        for _ in 0..10 {
            let at = match chance.below(6) {
                0 => 0,
                1 => Time::MAX,
                2 => START - chance.below(50) as Time * year,
                3 => START + chance.below(200) as Time * year,
                _ => START + chance.below(100_000) as Time,
            };
            let request = request(&mut chance);
            let fine = service.act("a", &request, at).is_ok();
            assert_eq!(fine, done(&mut journal, &request, at));
            for query in &looks {
                let query = serde_json::from_value(query.clone()).unwrap();
                service.view("a", &query, START).unwrap();
                service.view("a", &query, at).unwrap();
            }
            service.shelf(at);
            cases += 1;
        }
        drop(service);
        assert_eq!(
            read(folder.path()).0.journal.text(),
            journal.text(),
            "round {round}"
        );
    }
    // Two torn lines at the same moment: both copies stay.
    let text = journal.text();
    let mut copies = Vec::new();
    for left in [5, 9] {
        let file = folder.path().join("throws/a/throw.jsonl");
        let torn = &text.as_bytes()[..text.len() - left];
        fs::write(&file, torn).unwrap();
        let opened = claimed(folder.path()).open(&id(), START).unwrap();
        let copy = opened.mended.unwrap().copy;
        copies.push((copy, torn.to_vec()));
    }
    for (copy, torn) in copies {
        assert_eq!(fs::read(&copy).unwrap(), torn);
    }
    println!("clock set back and forth: {cases} deeds, 60 times opened again, lost: 0");
}
