//! A picture written as an SVG 1.1 document.
//!
//! Every drawing comes to paper this way, in a file of its own or in the printed sheet, which
//! embeds what is written here; the sheet's template draws no piece and no cloth itself.
//!
//! A photo of a cloth becomes a part of the document (`data:`, RFC 2397), which therefore loads
//! nothing. Where it is gone, the drawn texture is there instead.

use super::inks::{LIGHT, Paint, Style};
use super::letters::{legal, n, width};
use super::tiles::{SIDE, tile};
use crate::cloth::photos::PhotoId;
use crate::show::picture::{Hold, Ink, Mark, Picture, Tile};
use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesEnd, BytesStart, BytesText, Event};
use std::collections::BTreeSet;

/// Typefaces that are common on each system, then any sans serif.
const COMMON_TYPE: &str = "'Helvetica Neue', 'Segoe UI', Roboto, 'DejaVu Sans', Arial, sans-serif";

/// How a picture is written for paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SvgPaper {
    /// Its colours.
    pub style: Style,
    /// Millimetres to a unit of the picture.
    pub scale: f64,
    /// How wide a thin line is, in units of the picture.
    pub pen: f64,
    /// No letters are smaller than this, in units of the picture; those that stand on what they
    /// are of than three quarters of it.
    pub least: f64,
    /// Faces of type, as CSS lists them.
    pub type_faces: &'static str,
    /// Whether the paper is painted too.
    pub ground: bool,
}

impl SvgPaper {
    /// A sheet of its own for a drawing of this size: within A4 and Letter with a margin.
    pub(super) fn sheet([w, h]: [f64; 2], style: Style, pen: f64) -> SvgPaper {
        SvgPaper {
            style,
            scale: (190.0 / w).min(255.0 / h),
            pen,
            least: 0.0,
            type_faces: COMMON_TYPE,
            ground: true,
        }
    }
}

/// Gives a photo of a cloth as JPEG in base 64 (RFC 4648); none where it is not there.
pub type ClothPhotos<'a> = dyn Fn(&PhotoId) -> Option<String> + 'a;

/// The picture as a document.
pub fn svg(picture: &Picture, title: &str, paper: &SvgPaper, photos: &ClothPhotos<'_>) -> String {
    let found = |photo: &Option<PhotoId>| photo.as_ref().and_then(photos);
    let mut out = Out {
        xml: Writer::new(Vec::new()),
        picture,
        paper,
        photos: picture.cloths.iter().map(|c| found(&c.photo)).collect(),
    };
    out.document(title);
    let mut bytes = out.xml.into_inner();
    bytes.push(b'\n');
    String::from_utf8(bytes).unwrap_or_default()
}

struct Out<'a> {
    xml: Writer<Vec<u8>>,
    picture: &'a Picture,
    paper: &'a SvgPaper,
    /// The photos of the picture's cloths, in their order.
    photos: Vec<Option<String>>,
}

/// Attributes of one element.
type Attributes<'a> = Vec<(&'a str, String)>;

impl Out<'_> {
    /// Writing to memory cannot fail.
    fn event(&mut self, event: Event<'_>) {
        let _ = self.xml.write_event(event);
    }

    fn start<'a>(name: &'a str, attributes: &'a Attributes<'_>) -> BytesStart<'a> {
        let all = attributes.iter().map(|(key, value)| (*key, value.as_str()));
        BytesStart::new(name).with_attributes(all)
    }

    fn element(&mut self, name: &str, attributes: &Attributes<'_>) {
        self.event(Event::Empty(Self::start(name, attributes)));
    }

    fn open(&mut self, name: &str, attributes: &Attributes<'_>) {
        self.event(Event::Start(Self::start(name, attributes)));
    }

    fn close(&mut self, name: &str) {
        self.event(Event::End(BytesEnd::new(name)));
    }

    fn text(&mut self, text: &str) {
        self.event(Event::Text(BytesText::new(&legal(text))));
    }

    fn rect(&mut self, [x, y, w, h]: [f64; 4], more: Attributes<'_>) {
        let mut all = vec![
            ("x", n(x)),
            ("y", n(y)),
            ("width", n(w.max(0.0))),
            ("height", n(h.max(0.0))),
        ];
        all.extend(more);
        self.element("rect", &all);
    }

    fn path(&mut self, d: &str, more: Attributes<'_>) {
        if d.is_empty() {
            return;
        }
        let mut all = vec![("d", d.to_string())];
        all.extend(more);
        self.element("path", &all);
    }

    fn document(&mut self, title: &str) {
        let (w, h) = (self.picture.width, self.picture.height);
        let mm = |length: f64| format!("{}mm", n(length * self.paper.scale));
        self.event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)));
        let mut root = vec![
            ("xmlns", "http://www.w3.org/2000/svg".into()),
            ("version", "1.1".into()),
            ("width", mm(w)),
            ("height", mm(h)),
            ("viewBox", format!("0 0 {} {}", n(w), n(h))),
            ("font-family", self.paper.type_faces.into()),
        ];
        if self.photos.iter().any(Option::is_some) {
            root.push(("xmlns:xlink", "http://www.w3.org/1999/xlink".into()));
        }
        self.open("svg", &root);
        for (name, text) in [("title", title), ("desc", &self.picture.spoken)] {
            self.open(name, &vec![]);
            self.text(text);
            self.close(name);
        }
        if self.paper.ground {
            let fill = vec![("fill", self.paper.style.paper().into())];
            self.rect([0.0, 0.0, w, h], fill);
        }
        self.patterns();
        self.marks();
        self.close("svg");
    }

    /// The tiles the marks need: those of the cloths, and the hatchings of the inks.
    fn patterns(&mut self) {
        let style = self.paper.style;
        let picture = self.picture;
        let hatched: BTreeSet<Tile> = picture
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Area {
                    ink, cloth: None, ..
                }
                | Mark::Shape {
                    ink, cloth: None, ..
                } => style.paint(*ink).hatch,
                _ => None,
            })
            .collect();
        let woven = || picture.cloths.iter().enumerate();
        let plain = (0..picture.cloths.len()).all(|i| !self.is_tiled(i));
        if hatched.is_empty() && plain {
            return;
        }
        self.open("defs", &vec![]);
        for (i, cloth) in woven() {
            if let Some(photo) = self.photos[i].take() {
                self.photo_pattern(&photo, &format!("cloth-{i}"));
                self.photos[i] = Some(photo);
            } else if let Some(name) = cloth.tile {
                let (colour, strength) = style.marks(&tile(name), &style.ground(cloth));
                self.pattern(name, &format!("cloth-{i}"), colour, strength);
            }
        }
        for name in hatched {
            let colour = match name {
                Tile::Waste | Tile::Amiss => style.paint(Ink::Waste).stroke,
                Tile::Done | Tile::Lap => Some(LIGHT),
                _ => None,
            };
            let colour = colour.unwrap_or(style.dark());
            self.pattern(
                name,
                &format!("hatch-{name:?}"),
                colour,
                tile(name).strength,
            );
        }
        self.close("defs");
    }

    /// Begin a pattern as long and as wide as so many repeats; what is drawn in it has a frame of
    /// `within` by `within`.
    fn open_pattern(&mut self, id: &str, repeats: f64, within: f64) {
        let side = n(repeats * self.picture.repeat);
        let [x, y] = self.picture.from.map(n);
        let frame = vec![
            ("id", id.into()),
            ("patternUnits", "userSpaceOnUse".into()),
            ("x", x),
            ("y", y),
            ("width", side.clone()),
            ("height", side),
            ("viewBox", format!("0 0 {within} {within}")),
        ];
        self.open("pattern", &frame);
    }

    /// A pattern holds the marks only, and lies over the colour of the ground.
    fn pattern(&mut self, name: Tile, id: &str, colour: &str, strength: f64) {
        let marks = tile(name);
        self.open_pattern(id, marks.side, SIDE);
        let group = vec![
            ("fill", "none".into()),
            ("stroke", colour.into()),
            ("stroke-linecap", "round".into()),
            ("opacity", n(strength)),
        ];
        self.open("g", &group);
        for stroke in &marks.strokes {
            let mut own = match stroke.width {
                0.0 => vec![("fill", colour.into()), ("stroke", "none".into())],
                width => vec![("stroke-width", n(width))],
            };
            own.extend(stroke.dash.clone().map(|dash| ("stroke-dasharray", dash)));
            self.path(&stroke.d, own);
        }
        self.close("g");
        self.close("pattern");
    }

    /// A pattern of a photo, as long and as wide as two repeats.
    fn photo_pattern(&mut self, photo: &str, id: &str) {
        self.open_pattern(id, 2.0, 1.0);
        let image = vec![
            ("width", "1".into()),
            ("height", "1".into()),
            ("preserveAspectRatio", "xMidYMid slice".into()),
            ("xlink:href", format!("data:image/jpeg;base64,{photo}")),
        ];
        self.element("image", &image);
        self.close("pattern");
    }

    fn marks(&mut self) {
        // Squares of one cloth get its tile as one shape, after their grounds.
        let mut woven: Option<(u8, String)> = None;
        for mark in &self.picture.marks {
            if let Mark::Area {
                x,
                y,
                w,
                h,
                ink: Ink::Cloth,
                cloth: Some(cloth),
                label: None,
                name,
            } = mark
            {
                if woven.as_ref().is_some_and(|(last, _)| last != cloth) {
                    self.weave(woven.take());
                }
                let name = name.iter().map(|name| ("id", name.clone()));
                let mut own: Attributes<'_> = name.collect();
                own.push(("fill", self.ground(*cloth)));
                self.rect([*x, *y, *w, *h], own);
                let (_, d) = woven.get_or_insert_with(|| (*cloth, String::new()));
                let (x, y, w, h) = (n(*x), n(*y), n(*w), n(*h));
                *d += &format!("M{x} {y}h{w}v{h}h-{w}z");
                continue;
            }
            self.weave(woven.take());
            self.mark(mark);
        }
        self.weave(woven);
    }

    fn ground(&self, cloth: u8) -> String {
        let cloth = self.picture.cloths.get(usize::from(cloth));
        cloth.map_or_else(String::new, |cloth| self.paper.style.ground(cloth))
    }

    fn is_tiled(&self, cloth: usize) -> bool {
        let woven = self.picture.cloths.get(cloth);
        woven.is_some_and(|cloth| cloth.tile.is_some())
            || self.photos.get(cloth).is_some_and(Option::is_some)
    }

    fn weave(&mut self, woven: Option<(u8, String)>) {
        if let Some((cloth, d)) = woven.filter(|(cloth, _)| self.is_tiled(usize::from(*cloth))) {
            self.path(&d, vec![("fill", format!("url(#cloth-{cloth})"))]);
        }
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Area {
                x,
                y,
                w,
                h,
                ink,
                cloth,
                label,
                name,
            } => {
                let area = [*x, *y, *w, *h];
                let draw = |out: &mut Self, mut own: Attributes<'_>, first: bool| {
                    own.extend(name.iter().filter(|_| first).map(|n| ("id", n.clone())));
                    out.rect(area, own);
                };
                self.filled(*ink, *cloth, &draw);
                if let Some(label) = label {
                    let long = label.chars().count().max(1) as f64;
                    let size = (h * 0.34).min(w * 0.34).min(w / (long * 0.95));
                    let size = size.max(self.paper.least);
                    self.words([x + w / 2.0, y + h / 2.0], size, Ink::Number, label);
                }
            }
            Mark::Line {
                x1,
                y1,
                x2,
                y2,
                ink,
                arrow,
            } => {
                let paint = self.paper.style.paint(*ink);
                let d = format!("M{} {}L{} {}", n(*x1), n(*y1), n(*x2), n(*y2));
                self.line(&d, &paint);
                if *arrow {
                    self.head([*x1, *y1], [*x2, *y2], &paint);
                }
            }
            Mark::Shape { d, at, ink, cloth } => {
                let d = match at[..] {
                    [] => d.clone(),
                    _ => {
                        let each = |[x, y]: &[f64; 2]| format!("M{} {}{d}", n(*x), n(*y));
                        at.iter().map(each).collect()
                    }
                };
                if d.is_empty() {
                    return;
                }
                let draw = |out: &mut Self, own: Attributes<'_>, _| out.path(&d, own);
                self.filled(*ink, *cloth, &draw);
            }
            Mark::Words {
                x,
                y,
                text,
                size,
                ink,
                hold,
                upright,
            } => self.held([*x, *y], *size, *ink, text, *hold, *upright),
            Mark::Letters {
                text,
                size,
                at,
                ink,
            } => {
                for spot in at {
                    self.words(*spot, *size, *ink, text);
                }
            }
        }
    }

    /// Something with an inside: its ground, its tile, its line.
    fn filled(
        &mut self,
        ink: Ink,
        cloth: Option<u8>,
        draw: &dyn Fn(&mut Self, Attributes<'_>, bool),
    ) {
        let paint = self.paper.style.paint(ink);
        if let Some((colour, pens)) = paint.under {
            let width = n(pens * self.paper.pen);
            let under = vec![
                ("fill", "none".into()),
                ("stroke", colour.into()),
                ("stroke-width", width),
                ("stroke-linejoin", "round".into()),
            ];
            draw(self, under, true);
        }
        let mut line = self.stroke(&paint);
        let tiled = match cloth {
            Some(cloth) => self
                .is_tiled(usize::from(cloth))
                .then(|| format!("url(#cloth-{cloth})")),
            None => paint.hatch.map(|name| format!("url(#hatch-{name:?})")),
        };
        let mut ground: Attributes<'_> = match (cloth, paint.fill) {
            (Some(cloth), _) => vec![("fill", self.ground(cloth))],
            (None, Some(fill)) => vec![("fill", fill.into())],
            (None, None) => vec![("fill", "none".into())],
        };
        if cloth.is_none() && paint.fill_opacity < 1.0 {
            ground.push(("fill-opacity", n(paint.fill_opacity)));
        }
        match tiled {
            None => {
                ground.append(&mut line);
                draw(self, ground, true);
            }
            Some(tile) => {
                draw(self, ground, true);
                line.insert(0, ("fill", tile));
                draw(self, line, false);
            }
        }
    }

    fn stroke(&self, paint: &Paint) -> Attributes<'static> {
        let pen = self.paper.pen;
        let Some(colour) = paint.stroke else {
            return vec![];
        };
        let mut out = vec![
            ("stroke", colour.into()),
            ("stroke-width", n(paint.width * pen)),
            ("stroke-linejoin", "round".into()),
        ];
        if let Some([dash, gap]) = paint.dash {
            out.push((
                "stroke-dasharray",
                format!("{} {}", n(dash * pen), n(gap * pen)),
            ));
        }
        out
    }

    /// A line without an inside.
    fn line(&mut self, d: &str, paint: &Paint) {
        let none = || vec![("fill", "none".to_string())];
        if let Some((colour, pens)) = paint.under {
            let mut own = none();
            own.push(("stroke", colour.into()));
            own.push(("stroke-width", n(pens * self.paper.pen)));
            self.path(d, own);
        }
        let mut own = none();
        own.extend(self.stroke(paint));
        self.path(d, own);
    }

    /// The head of an arrow.
    fn head(&mut self, [x1, y1]: [f64; 2], [x2, y2]: [f64; 2], paint: &Paint) {
        let long = (x2 - x1).hypot(y2 - y1).max(1e-9);
        let (ux, uy) = ((x2 - x1) / long, (y2 - y1) / long);
        let size = (self.paper.pen * 9.0).min(long * 0.6);
        let (bx, by) = (x2 - ux * size, y2 - uy * size);
        let (wx, wy) = (-uy * size * 0.4, ux * size * 0.4);
        let d = format!(
            "M{} {}L{} {}L{} {}z",
            n(x2),
            n(y2),
            n(bx + wx),
            n(by + wy),
            n(bx - wx),
            n(by - wy)
        );
        let colour = paint.stroke.unwrap_or(self.paper.style.dark());
        self.path(&d, vec![("fill", colour.into())]);
    }

    fn words(&mut self, at: [f64; 2], size: f64, ink: Ink, text: &str) {
        self.held(at, size, ink, text, Hold::Middle, false);
    }

    /// Words, on a plate where they lie on cloth.
    fn held(
        &mut self,
        [x, y]: [f64; 2],
        size: f64,
        ink: Ink,
        text: &str,
        hold: Hold,
        upright: bool,
    ) {
        let style = self.paper.style;
        // A number or a name on cloth keeps near the place it is of.
        let placed = ink == Ink::Number && hold == Hold::Middle;
        let least = self.paper.least * if placed { 0.75 } else { 1.0 };
        let size = size.max(least);
        let turn = format!("rotate(-90 {} {})", n(x), n(y));
        if upright {
            self.open("g", &vec![("transform", turn)]);
        }
        if let Some((wide, high)) = plate(ink, text, size) {
            let left = match hold {
                Hold::Start => x,
                Hold::Middle => x - wide / 2.0,
                Hold::End => x - wide,
            };
            let mut own = vec![
                ("rx", n(high * 0.2)),
                ("fill", style.plate().to_string()),
                ("fill-opacity", "0.9".into()),
            ];
            if ink == Ink::Letters {
                // A fabric's letters stand on a sewn-on label.
                own.pop();
                own.push(("stroke", style.dark().into()));
                own.push(("stroke-width", n(self.paper.pen)));
            }
            self.rect([left, y - high / 2.0, wide, high], own);
        }
        let bold = matches!(ink, Ink::Title | Ink::Letters);
        // What stands on a plate is held within it.
        let x = match (plate(ink, text, size), hold) {
            (None, _) | (_, Hold::Middle) => x,
            (Some((wide, _)), Hold::Start) => x + wide / 2.0,
            (Some((wide, _)), Hold::End) => x - wide / 2.0,
        };
        let anchor = match (plate(ink, text, size), hold) {
            (Some(_), _) | (None, Hold::Middle) => "middle",
            (None, Hold::Start) => "start",
            (None, Hold::End) => "end",
        };
        let mut own = vec![
            ("x", n(x)),
            ("y", n(y + size * 0.36)),
            ("font-size", n(size)),
            ("font-weight", if bold { "bold" } else { "normal" }.into()),
            ("text-anchor", anchor.into()),
            ("fill", style.dark().into()),
        ];
        if ink == Ink::Wrong {
            own.push(("font-style", "italic".into()));
        }
        self.open("text", &own);
        self.text(text);
        self.close("text");
        if upright {
            self.close("g");
        }
    }
}

/// How large the plate is that words stand on, if they do.
pub(super) fn plate(ink: Ink, text: &str, size: f64) -> Option<(f64, f64)> {
    let high = size * 1.4;
    match ink {
        Ink::Letters => Some(((width(text, size) + size * 0.5).max(high), high)),
        Ink::Number | Ink::Bare | Ink::Wrong => Some((width(text, size) + size * 0.3, size * 1.2)),
        _ => None,
    }
}
