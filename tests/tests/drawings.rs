//! Drawings and tables: rendered and read back by others' code.

use lapwork_core::assembly::Rect;
use lapwork_core::deed::Action;
use lapwork_core::demo;
use lapwork_core::faces::{Face, Texture, mirrored};
use lapwork_core::journal::Journal;
use lapwork_core::measure::{Ruler, System, in_mm};
use lapwork_core::plan::Plan;
use lapwork_core::show::Lens;
use lapwork_core::show::drawing::{Drawing, Style, face_svg};
use lapwork_core::show::tables::Table;
use lapwork_core::tasks::Task;
use lapwork_core::words::Words;
use resvg::usvg::roxmltree::{Document, Node};
use resvg::{tiny_skia, usvg};
use std::collections::{BTreeMap, HashMap};
use std::sync::{Arc, OnceLock};

const NOW: i64 = 1_800_000_000_000;

fn fonts() -> Arc<usvg::fontdb::Database> {
    static FONTS: OnceLock<Arc<usvg::fontdb::Database>> = OnceLock::new();
    let read = || {
        let mut fonts = usvg::fontdb::Database::new();
        fonts.load_system_fonts();
        assert!(fonts.len() > 0, "no fonts here to draw words with");
        Arc::new(fonts)
    };
    FONTS.get_or_init(read).clone()
}

fn tree(svg: &str) -> usvg::Tree {
    let options = usvg::Options {
        fontdb: fonts(),
        ..usvg::Options::default()
    };
    usvg::Tree::from_str(svg, &options).unwrap()
}

/// Rendered so that a unit of the view box is `scale` pixels, with a margin of so many
/// pixels on every side.
struct Rendered {
    map: tiny_skia::Pixmap,
    scale: f32,
}

impl Rendered {
    /// The colour at a place of the view box.
    fn at(&self, x: f32, y: f32) -> [u8; 3] {
        let pixel = self
            .map
            .pixel((x * self.scale) as u32, (y * self.scale) as u32)
            .unwrap()
            .demultiply();
        [pixel.red(), pixel.green(), pixel.blue()]
    }

    /// The pixels of a rectangle of the view box.
    fn patch(&self, [x, y, w, h]: [f32; 4]) -> Vec<[u8; 3]> {
        let step = 1.0 / self.scale;
        let mut out = Vec::new();
        let mut down = y;
        while down < y + h {
            let mut along = x;
            while along < x + w {
                out.push(self.at(along, down));
                along += step;
            }
            down += step;
        }
        out
    }
}

fn view_box(doc: &Document<'_>) -> [f32; 2] {
    let view = doc.root_element().attribute("viewBox").unwrap();
    let parts: Vec<f32> = view.split(' ').map(|n| n.parse().unwrap()).collect();
    [parts[2], parts[3]]
}

fn render(svg: &str, scale: f32) -> Rendered {
    let doc = Document::parse(svg).unwrap();
    let [w, h] = view_box(&doc);
    let tree = tree(svg);
    let mut map =
        tiny_skia::Pixmap::new((w * scale).ceil() as u32, (h * scale).ceil() as u32).unwrap();
    let by = (w * scale) / tree.size().width();
    resvg::render(
        &tree,
        tiny_skia::Transform::from_scale(by, by),
        &mut map.as_mut(),
    );
    Rendered { map, scale }
}

fn keep(name: &str, rendered: &Rendered) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        let path = std::path::Path::new(&folder).join(format!("{name}.png"));
        rendered.map.save_png(path).unwrap();
    }
}

fn lens(words: &Words, system: System) -> Lens<'_> {
    Lens {
        words,
        ruler: Ruler {
            system,
            ..Ruler::default()
        },
        now: NOW,
    }
}

fn act(journal: &mut Journal, action: &Action) {
    let entry = journal.propose(action, NOW).unwrap();
    journal.accept(entry).unwrap();
}

/// A throw of this many squares with every texture and both denims on it.
fn throw(across: u16, down: u16) -> Journal {
    let textures = [
        Texture::Plain,
        Texture::Stripe,
        Texture::Check,
        Texture::Dot,
        Texture::Sprig,
        Texture::Slant,
        Texture::Wave,
        Texture::Cross,
    ];
    let hues = [
        "#b8442f", "#d9a441", "#6b7f3f", "#2f7f86", "#e8d6c3", "#7a4a78", "#c9d4dc", "#3c3b39",
    ];
    let mut prints = demo::prints();
    let first = prints[0].clone();
    prints.clear();
    for (i, (texture, hue)) in textures.into_iter().zip(hues).enumerate() {
        let mut print = first.clone();
        print.name = [
            "Rosehip", "Barley", "Moss", "Harbour", "Oat", "Plum", "Frost", "Coal",
        ][i]
            .into();
        (print.texture, print.colour) = (texture, hue.into());
        prints.push(print);
    }
    let begin = Action::Begin {
        name: "Eight of each".into(),
        plan: Plan {
            across,
            down,
            ..Plan::default()
        },
        prints,
        denims: demo::denims(),
    };
    let (mut journal, _) = Journal::begin(&begin, NOW).unwrap();
    let squares: Vec<Rect> = Rect::grid(across, down).squares().collect();
    let some = |of: usize| -> Vec<Rect> { squares.iter().copied().skip(1).step_by(of).collect() };
    if squares.len() > 4 {
        act(
            &mut journal,
            &Action::SetDenim {
                pieces: some(3),
                denim: 1,
                wrong_side_up: false,
            },
        );
        act(
            &mut journal,
            &Action::SetDenim {
                pieces: some(7),
                denim: 0,
                wrong_side_up: true,
            },
        );
    }
    let many = squares.len() as u32;
    act(
        &mut journal,
        &Action::Spread {
            front: many.div_ceil(2),
            back: many.div_ceil(3),
            seed: 3,
        },
    );
    journal
}

fn throws() -> Vec<(&'static str, Journal)> {
    vec![
        ("demo", demo::throw(NOW)),
        ("one", throw(1, 1)),
        ("six-by-eight", throw(6, 8)),
        ("large", throw(60, 60)),
    ]
}

#[test]
fn pictures() {
    let words = Words::english();
    for (name, journal) in throws() {
        for style in [Style::Colour, Style::Ink] {
            for drawing in Drawing::all(journal.throw()) {
                let svg = drawing
                    .svg(&journal, style, lens(&words, System::Inch))
                    .unwrap();
                let rendered = render(&svg, 1.0);
                keep(&format!("{name}-{}-{style:?}", drawing.key()), &rendered);
            }
        }
    }
}
