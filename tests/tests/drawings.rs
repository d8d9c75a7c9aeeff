//! Drawings and tables: rendered and read back by others' code.

use lapwork_core::cloth::fabric::{Face, Print, Texture};
use lapwork_core::command::Command;
use lapwork_core::demo;
use lapwork_core::faces::arrange::Arranger;
use lapwork_core::faces::spread::mirrored;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, Ruler, System, in_mm};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::show::drawing::{Drawing, Style, face_svg};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{Context, Query, View};
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::wishes::Wishes;
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
        assert!(!fonts.is_empty(), "no fonts here to draw words with");
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

/// A part of a drawing in pixels, so many to a unit of its view box.
struct Rendered {
    map: tiny_skia::Pixmap,
    scale: f32,
    corner: [f32; 2],
}

impl Rendered {
    /// The pixels of a rectangle of the view box, line by line.
    fn patch(&self, [x, y, w, h]: [f32; 4]) -> Vec<[u8; 3]> {
        let at = |from: f32, corner: f32| ((from - corner) * self.scale).round() as u32;
        let (left, top) = (at(x, self.corner[0]), at(y, self.corner[1]));
        let (wide, high) = ((w * self.scale) as u32, (h * self.scale) as u32);
        let mut out = Vec::new();
        for down in top..top + high {
            for along in left..left + wide {
                let pixel = self.map.pixel(along, down).unwrap().demultiply();
                out.push([pixel.red(), pixel.green(), pixel.blue()]);
            }
        }
        out
    }
}

fn view_box(doc: &Document<'_>) -> [f32; 2] {
    let view = doc.root_element().attribute("viewBox").unwrap();
    let parts: Vec<f32> = view.split(' ').map(|n| n.parse().unwrap()).collect();
    [parts[2], parts[3]]
}

fn render_part(svg: &str, [x, y, w, h]: [f32; 4], scale: f32) -> Rendered {
    let doc = Document::parse(svg).unwrap();
    let tree = tree(svg);
    let by = view_box(&doc)[0] * scale / tree.size().width();
    let mut map =
        tiny_skia::Pixmap::new((w * scale).ceil() as u32, (h * scale).ceil() as u32).unwrap();
    let place = tiny_skia::Transform::from_scale(by, by).post_translate(-x * scale, -y * scale);
    resvg::render(&tree, place, &mut map.as_mut());
    Rendered {
        map,
        scale,
        corner: [x, y],
    }
}

fn render(svg: &str, scale: f32) -> Rendered {
    let doc = Document::parse(svg).unwrap();
    let [w, h] = view_box(&doc);
    render_part(svg, [0.0, 0.0, w, h], scale)
}

fn keep(name: &str, rendered: &Rendered) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        let path = std::path::Path::new(&folder).join(format!("{name}.png"));
        rendered.map.save_png(path).unwrap();
    }
}

fn context(words: &Words, system: System) -> Context<'_> {
    Context {
        words,
        ruler: Ruler {
            system,
            ..Ruler::default()
        },
        now: NOW,
    }
}

fn act(journal: &mut Journal, action: &Command) {
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
    let begin = Command::Begin {
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
            &Command::SetDenim {
                pieces: some(3),
                denim: 1,
                wrong_side_up: false,
            },
        );
        act(
            &mut journal,
            &Command::SetDenim {
                pieces: some(7),
                denim: 0,
                wrong_side_up: true,
            },
        );
    }
    let many = squares.len() as u32;
    let wishes = Wishes {
        front: Count::at_most(many.div_ceil(2)),
        back: Count::at_most(many.div_ceil(3)),
        ..Wishes::default()
    };
    let layout = Arranger::new(journal.throw(), wishes, 3).layout(journal.throw());
    act(&mut journal, &Command::LayOut { wishes, layout });
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

fn number(node: &Node<'_, '_>, name: &str) -> f32 {
    node.attribute(name).unwrap().parse().unwrap()
}

/// Where the drawing has its squares, by the number chalked on them.
fn squares(doc: &Document<'_>) -> HashMap<String, [f32; 4]> {
    doc.descendants()
        .filter_map(|node| {
            let id = node.attribute("id")?.strip_prefix("square-")?;
            let area = ["x", "y", "width", "height"].map(|name| number(&node, name));
            Some((id.to_string(), area))
        })
        .collect()
}

fn texts(doc: &Document<'_>) -> Vec<String> {
    doc.descendants()
        .filter(|node| node.has_tag_name("text"))
        .map(|node| node.text().unwrap_or("").to_string())
        .collect()
}

/// Texts the renderer has laid out in letters.
fn laid_out(group: &usvg::Group) -> usize {
    let one = |node: &usvg::Node| match node {
        usvg::Node::Group(group) => laid_out(group),
        usvg::Node::Text(text) => usize::from(!text.layouted().is_empty()),
        _ => 0,
    };
    group.children().iter().map(one).sum()
}

fn rgb(hex: &str) -> [u8; 3] {
    [1, 3, 5].map(|at| u8::from_str_radix(&hex[at..at + 2], 16).unwrap())
}

fn every_drawing(mut check: impl FnMut(&str, &Journal, Drawing, Style, &str)) {
    let words = Words::english();
    for (name, journal) in throws() {
        for drawing in Drawing::all(journal.throw()) {
            for style in [Style::Colour, Style::Ink] {
                let svg = drawing.svg(&journal, style, &|_| None, context(&words, System::Inch));
                let name = format!("{name}-{}-{style:?}", drawing.key());
                check(&name, &journal, drawing, style, &svg.unwrap());
            }
        }
    }
}

#[test]
fn nothing_lies_outside_and_all_words_are_there() {
    every_drawing(|name, journal, drawing, style, svg| {
        let doc = Document::parse(svg).unwrap();
        let root = doc.root_element();
        let [w, h] = view_box(&doc);
        assert_eq!(root.attribute("version"), Some("1.1"));
        // Drawn with room round it: what reached out would lie there.
        let edge = 80.0;
        let from = svg.find("width=").unwrap();
        let to = svg.find(" font-family=").unwrap();
        let (wide, high) = (w + edge * 2.0, h + edge * 2.0);
        let roomy = format!(
            "{}width=\"{wide}\" height=\"{high}\" viewBox=\"-{edge} -{edge} {wide} {high}\"{}",
            &svg[..from],
            &svg[to..]
        );
        let tree = tree(&roomy);
        let mut map = tiny_skia::Pixmap::new(wide as u32, high as u32).unwrap();
        resvg::render(&tree, tiny_skia::Transform::default(), &mut map.as_mut());
        let line = map.width();
        for (i, pixel) in map.pixels().iter().enumerate() {
            let (x, y) = ((i as u32 % line) as f32, (i as u32 / line) as f32);
            let within = x >= edge - 1.0 && y >= edge - 1.0 && x <= w + edge && y <= h + edge;
            assert!(within || pixel.alpha() == 0, "{name}: {x}, {y}");
            let grey = pixel.red() == pixel.green() && pixel.green() == pixel.blue();
            assert!(grey || style == Style::Colour, "{name}: {x}, {y}");
        }
        keep(
            name,
            &Rendered {
                map,
                scale: 1.0,
                corner: [-edge, -edge],
            },
        );

        let texts = texts(&doc);
        assert_eq!(laid_out(tree.root()), texts.len(), "{name}");
        let throw = journal.throw();
        match drawing {
            Drawing::Face { face } => {
                assert_eq!(texts[0], throw.name);
                for (i, print) in throw.prints.iter().enumerate() {
                    let shows = throw.covers().iter().any(|c| c.on(face) == Some(i as u8));
                    assert_eq!(shows, texts.contains(&print.name), "{name}: {}", print.name);
                }
                assert_eq!(squares(&doc).len(), throw.plan.squares() as usize);
            }
            Drawing::Piece { n, .. } => assert_eq!(texts[0], throw.pile[&n].name()),
        }
    });
}

/// What a square shows, read from the throw and nothing else.
fn hue(journal: &Journal, square: Rect, face: Face) -> [u8; 3] {
    let throw = journal.throw();
    let cover = throw.cover(square);
    match cover.on(face) {
        Some(print) => rgb(&throw.prints[usize::from(print)].colour),
        None => rgb(&throw.denims[usize::from(cover.denim)].colour),
    }
}

#[test]
fn squares_have_the_colour_of_their_cloth_and_the_back_is_mirrored() {
    let words = Words::english();
    for (name, journal) in throws() {
        let plan = journal.throw().plan;
        let mut hues: Vec<[u8; 3]> = journal
            .throw()
            .prints
            .iter()
            .map(|p| rgb(&p.colour))
            .collect();
        hues.extend(journal.throw().denims.iter().map(|d| rgb(&d.colour)));
        for face in [Face::Front, Face::Back] {
            let svg = face_svg(
                &journal,
                face,
                Style::Colour,
                &|_| None,
                context(&words, System::Inch),
            );
            let doc = Document::parse(&svg).unwrap();
            let areas = squares(&doc);
            let least = |i: usize| areas.values().map(|a| a[i]).fold(f32::INFINITY, f32::min);
            let (x, y, cell) = (least(0), least(1), least(2));
            // Of a large throw the two upper corners.
            let shown = plan.across.min(9);
            for first in [0, plan.across - shown] {
                let part = [
                    x + f32::from(first) * cell,
                    y,
                    f32::from(shown) * cell,
                    f32::from(plan.down.min(9)) * cell,
                ];
                let rendered = render_part(&svg, part, 150.0 / cell);
                for row in 0..plan.down.min(9) {
                    for col in first..first + shown {
                        let area = [
                            x + (f32::from(col) + 0.05) * cell,
                            y + (f32::from(row) + 0.05) * cell,
                            cell * 0.9,
                            cell * 0.9,
                        ];
                        // Seen on the back, the place `col` is as far from the right.
                        let square = match face {
                            Face::Front => Rect::square(row, col),
                            Face::Back => Rect::square(row, plan.across - 1 - col),
                        };
                        let own = hue(&journal, square, face);
                        let patch = rendered.patch(area);
                        for hue in &hues {
                            let alike = patch.iter().filter(|p| *p == hue).count();
                            let share = alike as f32 / patch.len() as f32;
                            let right = if *hue == own {
                                share > 0.2
                            } else {
                                share < 0.01
                            };
                            assert!(right, "{name} {face:?} {row} {col}: {hue:?} {share}");
                        }
                        let id = format!("{}-{}", square.row + 1, square.col + 1);
                        assert!((areas[&id][0] - x - f32::from(col) * cell).abs() < 0.01);
                        assert_eq!(mirrored(square, plan.across).row, row);
                    }
                }
            }
        }
    }
}

#[test]
fn in_black_and_white_prints_differ_beside_their_letters() {
    let words = Words::english();
    let journal = throw(6, 8);
    let throw = journal.throw();
    let svg = face_svg(
        &journal,
        Face::Front,
        Style::Ink,
        &|_| None,
        context(&words, System::Inch),
    );
    let areas = squares(&Document::parse(&svg).unwrap());
    let rendered = render(&svg, 2.0);
    let mut bands: BTreeMap<u8, Vec<[u8; 3]>> = BTreeMap::new();
    for square in throw.assembly().whole().squares() {
        let Some(print) = throw.cover(square).front else {
            continue;
        };
        let [x, y, w, h] = areas[&format!("{}-{}", square.row + 1, square.col + 1)];
        // Below the letters' label and clear of the lines.
        let band = [x + w * 0.08, y + h * 0.74, w * 0.84, h * 0.18];
        bands.entry(print).or_insert_with(|| rendered.patch(band));
    }
    assert_eq!(bands.len(), 8);
    for (a, first) in &bands {
        for (b, second) in bands.range(a + 1..) {
            let off = |(p, q): &(&[u8; 3], &[u8; 3])| p[0].abs_diff(q[0]) > 100;
            let differ = first.iter().zip(second).filter(off).count();
            let share = differ as f32 / first.len() as f32;
            assert!(share > 0.05, "prints {a} and {b} differ by {share}");
        }
    }
}

#[test]
fn a_sewn_join_is_dashed_and_one_to_be_sewn_is_not() {
    let words = Words::english();
    let journal = demo::throw(NOW);
    let throw = journal.throw();
    for face in [Face::Front, Face::Back] {
        let svg = face_svg(
            &journal,
            face,
            Style::Colour,
            &|_| None,
            context(&words, System::Inch),
        );
        let areas = squares(&Document::parse(&svg).unwrap());
        let rendered = render(&svg, 2.0);
        let (mut sewn, mut open) = (0, 0);
        for row in 0..8 {
            for col in [0, 2, 4] {
                let pair = Rect::from([row, col, 1, 2]);
                let place = |col: u16| areas[&format!("{}-{}", row + 1, col + 1)];
                let edge = place(col)[0].max(place(col + 1)[0]);
                let [_, y, w, h] = place(col);
                let thread: Vec<bool> = rendered
                    .patch([edge - 0.4, y + h * 0.2, 1.0, h * 0.6])
                    .chunks(2)
                    .map(|p| p.iter().any(|c| c[0] > 200 && c[2] < 160))
                    .collect();
                let turns = thread.windows(2).filter(|t| t[0] != t[1]).count();
                if throw.has(pair, Task::Stitch) {
                    sewn += 1;
                    assert!(turns >= 6, "{face:?} {row} {col}: {turns}");
                } else {
                    open += 1;
                    assert!(!thread.contains(&true), "{face:?} {row} {col} {w}");
                }
            }
        }
        assert_eq!((sewn, open), (12, 12));
    }
}

#[test]
fn what_the_maker_typed_is_told_as_typed() {
    let words = Words::english();
    let typed = "<script>alert(1)</script> & \"two\" 'one' שמיכה";
    let mut journal = throw(2, 2);
    let name = typed.to_string();
    act(&mut journal, &Command::Rename { name });
    let (mut prints, denims) = (
        journal.throw().prints.clone(),
        journal.throw().denims.clone(),
    );
    for (n, print) in prints.iter_mut().enumerate() {
        print.name = format!("=1+1 ]]> {typed} {n}");
    }
    act(&mut journal, &Command::SetCloth { prints, denims });
    for face in [Face::Front, Face::Back] {
        let context = context(&words, System::Metric);
        let svg = face_svg(&journal, face, Style::Colour, &|_| None, context);
        let doc = Document::parse(&svg).unwrap();
        assert!(!doc.descendants().any(|node| node.has_tag_name("script")));
        assert_eq!(
            texts(&doc)[..2].join(" ").split(" שמיכה").next(),
            typed.split(" שמיכה").next()
        );
        assert!(texts(&doc).iter().any(|t| t.starts_with("=1+1")));
        keep(&format!("typed-{face:?}"), &render(&svg, 1.0));
        let file = Drawing::Face { face }.file_name(journal.throw(), context);
        assert!(
            file.starts_with("script-alert-1-script-two-one-שמיכה-"),
            "{file}"
        );
    }
    let rows = read(&Table::Covering.csv(&journal, context(&words, System::Inch)));
    for (n, row) in rows[1..].iter().enumerate() {
        assert_eq!(row[1], format!("'=1+1 ]]> {typed} {n}"));
    }
}

#[test]
fn a_piece_is_drawn_with_its_squares_and_figures() {
    let words = Words::english();
    let journal = demo::throw(NOW);
    let throw = journal.throw();
    for (system, unit, other) in [
        (System::Inch, "\u{a0}in", "\u{a0}mm"),
        (System::Metric, "\u{a0}mm", "\u{a0}in"),
    ] {
        for (n, heap) in &throw.pile {
            for index in 0..2u8 {
                let drawing = Drawing::Piece { n: *n, index };
                let svg = drawing
                    .svg(&journal, Style::Colour, &|_| None, context(&words, system))
                    .unwrap();
                let doc = Document::parse(&svg).unwrap();
                let areas: Vec<[f32; 4]> = squares(&doc).into_values().collect();
                let expected = heap.expected(usize::from(index), &throw.plan);
                assert_eq!(areas.len(), expected.get() as usize);
                for (i, a) in areas.iter().enumerate() {
                    assert!((a[2] - a[3]).abs() < 0.05);
                    for b in &areas[..i] {
                        let apart = |k: usize| (a[k] - b[k]).abs() > a[2] - 0.05;
                        assert!(apart(0) || apart(1), "{a:?} {b:?}");
                    }
                }
                let texts = texts(&doc);
                let is_figure = |t: &&String| t.ends_with(unit) && t.chars().count() < 14;
                assert!(texts.iter().filter(is_figure).count() > 6, "{texts:?}");
                assert!(!texts.iter().any(|t| t.contains(other)), "{texts:?}");
            }
        }
    }
    let none = Drawing::Piece { n: 9, index: 0 };
    assert!(
        none.svg(
            &journal,
            Style::Ink,
            &|_| None,
            context(&words, System::Inch)
        )
        .is_err()
    );
}

fn read(csv: &str) -> Vec<Vec<String>> {
    read_by(csv, b',')
}

fn read_by(csv: &str, separator: u8) -> Vec<Vec<String>> {
    let csv = csv.strip_prefix('\u{feff}').expect("a byte-order mark");
    // Every end of a line is CR LF, but within quotes, where there are none here.
    assert_eq!(csv.matches('\n').count(), csv.matches("\r\n").count());
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .delimiter(separator)
        .from_reader(csv.as_bytes());
    let rows = reader
        .records()
        .map(|row| row.unwrap().iter().map(str::to_string).collect());
    let rows: Vec<Vec<String>> = rows.collect();
    let mut heads = rows[0].clone();
    heads.sort();
    heads.dedup();
    assert_eq!(heads.len(), rows[0].len(), "{heads:?}");
    rows
}

#[test]
fn tables_are_read_again_in_either_region() {
    let journal = demo::throw(NOW);
    let (english, german) = (Words::english(), Words::of("de"));
    for table in Table::ALL {
        let point = read_by(&table.csv(&journal, context(&english, System::Inch)), b',');
        let comma = read_by(&table.csv(&journal, context(&german, System::Inch)), b';');
        assert_eq!(point.len(), comma.len(), "{table:?}");
        let mut decimals = 0;
        for (row, other) in point.iter().zip(&comma).skip(1) {
            assert_eq!(row.len(), other.len(), "{table:?}");
            for (cell, other) in row.iter().zip(other) {
                // The same number, with the decimal sign of the region.
                if cell.parse::<f64>().is_ok() {
                    assert_eq!(cell.replace('.', ","), *other, "{table:?}");
                    decimals += usize::from(cell.contains('.'));
                }
            }
        }
        let lengths = matches!(table, Table::Joins | Table::Cutting | Table::Supplies);
        assert_eq!(decimals > 0, lengths, "{table:?}: {decimals}");
    }
}

#[test]
fn no_typed_name_is_a_formula_in_any_region() {
    let mut journal = demo::throw(NOW);
    let typed = ["=1+1", "Rose;=1+1", "Rose,@SUM(A1)", "Rose\t-2"];
    let prints = typed.iter().zip(demo::prints()).map(|(name, print)| Print {
        name: name.to_string(),
        ..print
    });
    let cloth = Command::SetCloth {
        prints: prints.collect(),
        denims: demo::denims(),
    };
    let entry = journal.propose(&cloth, NOW).unwrap();
    journal.accept(entry).unwrap();
    for words in [Words::english(), Words::of("de")] {
        let context = context(&words, System::Inch);
        for table in Table::ALL {
            let csv = table.csv(&journal, context);
            // Opened with any of these signs between cells, no cell is a formula.
            for separator in [b',', b';', b'\t'] {
                let mut reader = csv::ReaderBuilder::new()
                    .has_headers(false)
                    .flexible(true)
                    .delimiter(separator)
                    .from_reader(csv.trim_start_matches('\u{feff}').as_bytes());
                for row in reader.records() {
                    for cell in &row.unwrap() {
                        let first = cell.trim_start_matches([' ', '"']).chars().next();
                        let formula = first.is_some_and(|c| "=+-@".contains(c));
                        assert!(!formula, "{table:?}, {separator}: {cell:?}");
                    }
                }
            }
        }
        let Ok(View::HandOn(seen)) = lapwork_core::show::answer(&journal, &Query::HandOn, context)
        else {
            panic!("the screen of what can be exported");
        };
        let tables = seen.sections.iter().find(|s| s.key == "tables").unwrap();
        assert!(
            tables.said.iter().any(|line| line.contains('4')),
            "{tables:?}"
        );
    }
}

#[test]
fn tables_hold_the_figures_of_the_core() {
    let words = Words::english();
    for (name, journal) in throws() {
        let throw = journal.throw();
        let context = context(&words, System::Metric);
        let table = |table: Table| read(&table.csv(&journal, context)).split_off(1);
        let near = |text: &str, mm: f64, unit: f64| {
            let number: f64 = text.parse().unwrap();
            let hundredth = 0.005 * unit + 2e-5;
            assert!(
                (number * unit - mm).abs() < hundredth,
                "{name}: {text} {mm}"
            );
        };
        let print = |p: Option<u8>| p.map_or("", |p| throw.prints[usize::from(p)].name.as_str());

        let rows = table(Table::Squares);
        assert_eq!(rows.len(), throw.plan.squares() as usize);
        for (row, square) in rows.iter().zip(throw.assembly().whole().squares()) {
            let cover = throw.cover(square);
            let (r, c) = (square.row + 1, square.col + 1);
            assert_eq!(row[0], format!("{r}·{c}"));
            let back = throw.plan.across + 1 - c;
            assert_eq!(row[1..4], [r, c, back].map(|n| n.to_string()));
            assert_eq!(row[4], throw.denims[usize::from(cover.denim)].name);
            assert_eq!(row[5] == "yes", cover.wrong_side_up);
            assert_eq!(
                [&*row[6], &*row[7]],
                [print(cover.front), print(cover.back)]
            );
            assert_eq!(row[8] == "not cut", !throw.has(square, Task::Cut));
        }

        let rows = table(Table::Covering);
        assert_eq!(rows.len(), throw.prints.len());
        for (i, row) in rows.iter().enumerate() {
            let on = |face| {
                let own = throw
                    .covers()
                    .iter()
                    .filter(|c| c.on(face) == Some(i as u8));
                own.count()
            };
            let (front, back) = (on(Face::Front), on(Face::Back));
            assert_eq!(
                row[2..5],
                [front, back, front + back].map(|n| n.to_string())
            );
            // What was glued on spoilt squares is there no more; the pile gives no more fabric.
            let spoilt = throw.losses.iter().flat_map(|loss| loss.glued);
            let gone = spoilt.filter(|p| *p == Some(i as u8)).count() as u32;
            let there = throw.prints[i].stock.map(|counted| counted.get() - gone);
            assert_eq!(row[5].parse().ok(), there);
        }

        let rows = table(Table::Joins);
        assert_eq!(rows.len(), throw.plan.squares() as usize - 1);
        for (row, join) in rows.iter().zip(throw.assembly().joins()) {
            let lap = in_mm(throw.made(join.whole).lap);
            near(&row[4], lap, 25.4);
            near(&row[5], lap, 1.0);
            assert_eq!(row[6] == "yes", throw.has(join.whole, Task::Stitch));
        }

        let rows = table(Table::Cutting);
        let pieces = throw
            .pile
            .iter()
            .flat_map(|(n, heap)| (0..heap.counted.len()).map(move |i| (*n, heap, i)));
        assert_eq!(rows.len(), pieces.clone().count());
        for (row, (n, heap, i)) in rows.iter().zip(pieces) {
            assert_eq!((&*row[0], &*row[1]), (&*n.to_string(), heap.name()));
            let lapwork_core::cloth::garments::Source::Cloth(garment) = &heap.from else {
                panic!("{row:?}");
            };
            let [low, top, left, right] = garment.pieces[i].reach();
            for (at, length) in [(4, right - left), (6, top - low)] {
                near(&row[at], in_mm(length), 25.4);
                near(&row[at + 1], in_mm(length), 1.0);
            }
            let expected = heap.expected(i, &throw.plan);
            assert_eq!(row[9].parse(), Ok(expected.get()));
            assert_eq!(row[10].parse().ok(), heap.counted[i].map(Count::get));
        }

        let rows = table(Table::Supplies);
        assert_eq!(rows[0][1].parse(), Ok(throw.plan.squares()));
        let size = throw.finished();
        let need = throw.plan.binding_for(size.width, size.height);
        let bound = rows.iter().find(|r| r[2] == "strips").unwrap();
        assert_eq!(bound[1].parse(), Ok(need.strips));
        near(&bound[3], in_mm(need.length), 25.4);
        near(&bound[4], in_mm(need.length), 1.0);

        let rows = table(Table::Record);
        assert_eq!(rows.len(), journal.len());
        for (row, (entry, stands)) in rows.iter().zip(journal.entries()) {
            assert_eq!(row[1].parse(), Ok(entry.n));
            assert!(row[0].len() == 20 && row[0].ends_with('Z') && !row[2].is_empty());
            assert_eq!(row[3] == "yes", stands);
        }
        assert!(rows.is_sorted_by(|a, b| a[0] <= b[0]));
    }
}
