//! The window for those who see little, press keys, want large letters or no motion.
//!
//! ```text
//! cargo test --workspace --test access -- --nocapture
//! ```
//! prints the tables that DEVELOPERS.md keeps.

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_tests::access::{Audit, Seen, Tour, pictures};
use lapwork_tests::walk::Walk;
use serde_json::json;
use std::collections::BTreeSet;

fn photo() -> Vec<u8> {
    let picture = RgbImage::from_fn(400, 200, |x, _| Rgb([200, (x / 2) as u8, 40]));
    let mut out = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Png).unwrap();
    out.into_inner()
}

/// Dress the page as the settings do, with nothing left moving.
fn dress(walk: &Walk, theme: &str, text: u32) {
    let script = "const [theme, text] = arguments;
        const page = document.documentElement;
        page.dataset.theme = theme;
        page.style.fontSize = `${text}%`;
        page.classList.toggle('large', text >= 140);
        document.querySelectorAll('details').forEach((fold) => (fold.open = true));
        document.getAnimations().forEach((motion) => motion.finish());";
    walk.window.run(script, &[json!(theme), json!(text)]);
}

fn picture(walk: &Walk, name: &str) {
    let Some(folder) = pictures() else { return };
    let name = name.replace(", ", "-").replace(": ", "-").replace(' ', "-");
    std::thread::sleep(std::time::Duration::from_millis(150));
    walk.window.picture(&folder.join(format!("{name}.png")));
}

#[test]
fn every_screen_holds_against_the_rules_in_light_and_in_dark() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    Audit::begin(&walk);
    let mut faults: Vec<String> = Vec::new();
    let mut held = BTreeSet::new();
    let mut table = Vec::new();
    let mut undecided = 0;
    let mut told = 0;
    Tour::take(&walk, &photo(), &mut |walk, screen| {
        for theme in ["light", "dark"] {
            dress(walk, theme, 100);
            let audit = Audit::of(walk);
            let at = |line: &String| format!("{screen}, {theme}: {line}");
            faults.extend(audit.violations.iter().map(at));
            for line in &audit.undecided {
                println!("undecided: {}", at(line));
            }
            undecided += audit.undecided.len();
            held.extend(audit.passed.iter().cloned());
            let seen = Seen::of(walk);
            faults.extend(seen.contrast.iter().map(|l| at(&format!("contrast {l}"))));
            faults.extend(seen.targets.iter().map(|l| at(&format!("target {l}"))));
            faults.extend(seen.sideways.iter().map(|l| at(&format!("sideways {l}"))));
            for line in &seen.unclear {
                println!("unclear ground: {}", at(line));
            }
            table.push((
                format!("{screen}, {theme}"),
                audit.passed.len(),
                audit.violations.len(),
                audit.elements,
                seen.counted,
            ));
            if theme == "dark" {
                picture(walk, &format!("{screen}-dark"));
            }
        }
        // Between the sizes nothing shrinks below a finger's breadth.
        for text in [150, 200] {
            dress(walk, "light", text);
            let seen = Seen::of(walk);
            let at = |line: &String| format!("{screen}, {text} %: target {line}");
            faults.extend(seen.targets.iter().map(at));
        }
        dress(walk, "light", 100);
        faults[told..].iter().for_each(|fault| println!("fault: {fault}"));
        told = faults.len();
    });
    println!("| Screen, theme | Rules passed | Violations | Elements | Targets | Texts |");
    println!("| --- | --- | --- | --- | --- | --- |");
    for (screen, rules, violations, elements, [targets, texts]) in &table {
        println!("| {screen} | {rules} | {violations} | {elements} | {targets} | {texts} |");
    }
    println!(
        "{} screens, {} readings, {} different rules held, {undecided} undecided",
        table.len() / 2,
        table.len(),
        held.len()
    );
    // The rules were really gone by.
    for rule in ["color-contrast", "target-size", "button-name", "label", "region", "heading-order"] {
        assert!(held.contains(rule), "{rule} was never tried: {held:?}");
    }
    assert!(table.len() >= 110, "only {} readings", table.len());
    assert!(
        faults.is_empty(),
        "{} faults:\n{}",
        faults.len(),
        faults.join("\n")
    );
}
