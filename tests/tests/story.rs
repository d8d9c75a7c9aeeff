//! The story of a making, its photos, and a throw made again, in the real window.

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_tests::walk::Walk;
use serde_json::{Value, json};
use std::fs;
use std::path::Path;

/// A picture twice as wide as high, red on the left and blue on the right.
fn photo() -> Vec<u8> {
    let picture = RgbImage::from_fn(2000, 1000, |x, _| {
        if x < 1000 {
            Rgb([200, 40, 40])
        } else {
            Rgb([40, 60, 200])
        }
    });
    let mut out = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Png).unwrap();
    out.into_inner()
}

/// Save a picture of the window, if a folder for them is named.
fn picture(walk: &Walk, name: &str) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        std::thread::sleep(std::time::Duration::from_millis(400));
        let file = format!("{name}.png");
        walk.window.picture(&Path::new(&folder).join(file));
    }
}

/// Width and height of the first photo shown, once it has come.
fn shown(walk: &Walk) -> Value {
    let script = "const e = document.querySelector('[data-testid=photo]');
        if (e) { e.loading = 'eager'; e.scrollIntoView(); }
        return e && e.complete ? [e.naturalWidth, e.naturalHeight] : null;";
    walk.window
        .wait_until("a photo is shown", |w| !w.run(script, &[]).is_null());
    walk.window.run(script, &[])
}

fn open_story(walk: &Walk) {
    walk.tap("tab-history");
    walk.tap("open-story");
    walk.sees("story-made", "squares cut");
}

/// Points of the window that are as strongly magenta as no cloth and no sign is, with what shows a
/// photo of a fabric brought into view.
fn magenta(walk: &Walk) -> usize {
    walk.window.run(
        "const all = [...document.querySelectorAll('pattern image')];
         const first = all.find((e) => e.closest('dialog')) ?? all[0];
         first?.closest('svg').scrollIntoView({ block: 'center' });",
        &[],
    );
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("seen.png");
    walk.window.picture(&file);
    let seen = image::open(&file).expect("a picture").to_rgb8();
    let strong = |p: &&Rgb<u8>| p.0[0] > 230 && p.0[1] < 30 && p.0[2] > 230;
    seen.pixels().filter(strong).count()
}

/// The photo of a fabric is chosen in the list of fabrics and shown wherever the fabric is, beside
/// its letters; without it the drawn texture is back.
#[test]
fn a_photo_of_a_fabric_is_shown_wherever_it_is_drawn() {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let id = walk.id();
    let mut cloth = std::io::Cursor::new(Vec::new());
    RgbImage::from_pixel(900, 600, Rgb([250, 0, 250]))
        .write_to(&mut cloth, ImageFormat::Png)
        .unwrap();
    walk.tap("tab-faces");
    walk.window.select("[data-testid^=face-]");
    assert_eq!(magenta(&walk), 0);
    let faces = walk.face("front");
    let print = faces.iter().find_map(|cell| cell["print"].as_u64());
    let print = print.expect("a fabric is on the front");

    // What is no photo is refused, and the list stays as it was.
    walk.tap("edit-cloth");
    fs::write(walk.window.brought(), "no photo").unwrap();
    walk.tap(&format!("print-photo-{print}"));
    walk.window.wait_text("That is not a photo Lapwork reads.");
    fs::write(walk.window.brought(), cloth.into_inner()).unwrap();
    walk.tap(&format!("print-photo-{print}"));
    walk.window.wait_until("it can be taken away again", |w| {
        !w.run(
            "return document.querySelector(`[data-testid=print-photo-none-${arguments[0]}]`)",
            &[json!(print)],
        )
        .is_null()
    });
    walk.window
        .wait_until("the swatch shows it", |_| magenta(&walk) > 200);
    picture(&walk, "swatch-list");
    walk.tap("cloth-keep");

    // Its squares show it, with their letters, and still do after a restart.
    for turn in 0..2 {
        walk.window
            .wait_until("its squares show it", |_| magenta(&walk) > 200);
        let cells = walk.face("front");
        let of_it = |cell: &&Value| cell["print"].as_u64() == Some(print);
        let signs = cells.iter().find(of_it).expect("a square of it")["signs"].to_string();
        assert!(signs.contains("letters"), "{signs}");
        picture(&walk, &format!("swatch-faces-{turn}"));
        if turn == 0 {
            walk.window.reopen();
            walk.window.wait_text("Window-seat throw");
            assert_eq!(magenta(&walk), 0, "no throw is open");
            walk.tap("throw-row");
            walk.sees("card-title", "Cut a square");
            walk.tap("tab-faces");
        }
    }
    // It lies beside the throw, made small and named by its content.
    let folder = data.path().join("throws").join(&id).join("photos");
    let kept: Vec<_> = fs::read_dir(&folder).unwrap().collect();
    assert_eq!(kept.len(), 1);
    walk.tap("open-covering");
    walk.window
        .wait_until("the covering list shows it", |_| magenta(&walk) > 200);
    picture(&walk, "swatch-covering");
    walk.tap("back");

    walk.tap("edit-cloth");
    walk.tap(&format!("print-photo-none-{print}"));
    walk.window
        .wait_until("it is drawn again", |_| magenta(&walk) == 0);
    walk.tap("cloth-keep");
    walk.window
        .wait_until("its squares are drawn again", |_| magenta(&walk) == 0);
    let again = walk.face("front");
    let textures =
        |cells: &[Value]| -> Vec<Value> { cells.iter().map(|c| c["cloth"].clone()).collect() };
    assert_eq!(textures(&again), textures(&faces));
}

#[test]
fn a_photo_and_a_lesson_from_the_step_to_the_story_and_the_next_throw() {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let old = walk.id();
    let faces = walk.face("front");

    // A lesson for the next throw, written at the cutting table.
    walk.tap("note");
    walk.types("note-text", "Cut the faded jeans first.");
    walk.tap("note-next");
    picture(&walk, "note");
    walk.tap("note-keep");
    walk.sees("card-lessons", "Cut the faded jeans first.");

    // What is no photo is refused, and says so.
    fs::write(walk.window.brought(), "no photo").unwrap();
    walk.tap("note");
    walk.tap("photo-choose");
    walk.window.wait_text("That is not a photo Lapwork reads.");
    // A photo, with words to it.
    fs::write(walk.window.brought(), photo()).unwrap();
    walk.tap("photo-choose");
    assert_eq!(shown(&walk), json!([1600, 800]));
    walk.types("note-text", "Both jeans on the table");
    picture(&walk, "photo");
    walk.tap("note-keep");
    walk.window.wait_until("the sheet is closed", |_| {
        walk.reads("note-text").is_empty()
    });

    // Both are in the story, and still there after a restart.
    open_story(&walk);
    walk.window.reopen();
    walk.window.wait_text("Window-seat throw");
    walk.tap("throw-row");
    walk.sees("card-title", "Cut a square");
    open_story(&walk);
    assert_eq!(shown(&walk), json!([1600, 800]));
    picture(&walk, "story-photo");
    walk.window
        .run("document.getElementById('main').scrollTop = 0", &[]);
    picture(&walk, "story");
    let items = walk.window.run(
        "return [...document.querySelectorAll('[data-testid=story-item]')].map((e) => e.innerText)",
        &[],
    );
    let items: Vec<&str> = items
        .as_array()
        .expect("items")
        .iter()
        .filter_map(Value::as_str)
        .collect();
    assert!(
        items.iter().any(|i| i.contains("For next time")
            && i.contains("Cut the faded jeans first.")
            && i.contains("Square 7·4 · cut")),
        "{items:?}"
    );
    assert!(items.iter().any(|i| i.contains("scorched")), "{items:?}");

    // The page that is saved holds the photo and needs nothing else.
    walk.tap("story-save");
    walk.sees("handed", "Window-seat throw - Story.html");
    let page = walk.window.handed().join("Window-seat throw - Story.html");
    let page = fs::read_to_string(page).unwrap();
    assert!(page.contains("src=\"data:image/jpeg;base64,/9j/"));
    assert!(page.contains("Both jeans on the table"));
    assert!(!page.contains("<script"));

    // The photo goes and comes back with its throw.
    let photos = |place: &str| {
        let folder = data.path().join(place).join(&old).join("photos");
        fs::read_dir(folder).map_or(0, Iterator::count)
    };
    assert_eq!(photos("throws"), 1);
    for (command, there) in [("delete", "deleted"), ("restore", "throws")] {
        walk.window
            .call(
                "shelf_command",
                json!({ "command": { "command": command, "id": old } }),
            )
            .expect("it is done");
        assert_eq!(photos(there), 1);
    }

    // Made again: the lesson is on the plan of the new throw and at its step.
    walk.tap("back");
    walk.tap("back");
    walk.tap("throw-menu");
    picture(&walk, "menu");
    walk.tap("make-again");
    walk.sees("lessons", "Learned from Window-seat throw");
    walk.sees("lessons", "Cut the faded jeans first.");
    walk.sees("lessons", "On a scrap, a lap of ½ in was found right.");
    walk.sees("lessons", "One square was spoilt: scorched.");
    picture(&walk, "again");
    for _ in 0..3 {
        walk.tap("next-page");
    }
    walk.tap("begin");
    walk.sees("card-title", "Cut a square");
    walk.sees("card-piece", "Square 1·1");
    walk.sees("card-lessons", "Cut the faded jeans first.");
    picture(&walk, "step");
    let new = walk.id();
    assert_ne!(new, old);
    let cells = |face: &[Value]| {
        let each = face.iter().map(|c| json!([c["piece"], c["cloth"]]));
        each.collect::<Vec<_>>()
    };
    let carried = walk.face("front");
    assert_eq!(
        cells(&carried),
        cells(&faces),
        "the faces are wished for again"
    );
    walk.tap("tab-plan");
    walk.sees("lessons", "Cut the faded jeans first.");
    picture(&walk, "plan");
    // Its way to the shelf does not lead by the throw it was made after.
    walk.tap("back");
    walk.tap("new-throw");
    walk.window.wait_text("Squares across");
}

#[test]
fn a_photo_that_is_gone_leaves_its_words() {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let id = walk.id();
    fs::write(walk.window.brought(), photo()).unwrap();
    open_story(&walk);
    walk.tap("story-photo");
    assert_eq!(shown(&walk), json!([1600, 800]));
    walk.types("note-text", "The faded pair");
    walk.tap("note-keep");
    walk.window.wait_text("The faded pair");
    let folder = data.path().join("throws").join(&id).join("photos");
    fs::remove_dir_all(folder).unwrap();
    walk.window.reopen();
    walk.window.wait_text("Window-seat throw");
    walk.tap("throw-row");
    walk.sees("card-title", "Cut a square");
    open_story(&walk);
    // It is asked for only once it comes near to being seen.
    walk.window.run(
        "document.querySelector('[data-testid=photo]')?.scrollIntoView()",
        &[],
    );
    walk.sees("photo-gone", "no longer on the device");
    walk.window.run(
        "document.querySelector('[data-testid=photo-gone]').scrollIntoView()",
        &[],
    );
    picture(&walk, "gone");
    walk.window.wait_text("The faded pair");

    // Nothing but a photo of a throw is to be had by the photos' address.
    let script = "const [path, done] = arguments;
        const image = new Image();
        image.onload = () => done('loaded');
        image.onerror = () => done('refused');
        image.src = `photo://localhost/${path}`;";
    for path in [
        format!("{id}/throw.jsonl"),
        format!("{id}/{}", "0".repeat(64)),
        format!("../{id}/{}", "0".repeat(64)),
        "%2e%2e%2f%2e%2e%2fsettings.json".to_string(),
        String::new(),
    ] {
        assert_eq!(
            walk.window.run_and_wait(script, &[json!(path)]),
            json!("refused")
        );
    }
}
