//! All that the typesetter can see: the template, the data, the pictures and photos, the letters.

use crate::pictures::Pictures;
use crate::tidy::{Coverage, LONGEST_LARGE, LONGEST_WORD, Tidy};
use crate::{LetterSize, Options, Photos, PrintFault};
use flate2::read::ZlibDecoder;
use lapwork_core::show::Sheet;
use serde_json::Value;
use std::collections::HashMap;
use std::io::Read as _;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, LazyLock};
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

const TEMPLATE: &str = include_str!("sheet.typ");

/// The faces as the build has packed them, each with the size it has unpacked.
static FACES: &[(usize, &[u8])] = &include!(concat!(env!("OUT_DIR"), "/faces.rs"));

/// Letters, the first choice first: Noto Sans, and for what it lacks the serif and the
/// monospaced letters that come with the typesetter.
static LETTERS: LazyLock<Vec<Font>> = LazyLock::new(|| {
    let unpacked = FACES.iter().map(|(size, packed)| {
        let mut bytes = Vec::with_capacity(*size);
        let read = ZlibDecoder::new(*packed).read_to_end(&mut bytes);
        // The build packed it, so that it can be unpacked.
        read.expect("a face can be unpacked");
        Bytes::new(bytes)
    });
    unpacked.flat_map(Font::iter).collect()
});

/// What typesets one print.
pub(crate) struct Typesetter {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    template: Source,
    /// The data, the pictures and the photos.
    files: HashMap<FileId, Bytes>,
    /// What the template reads.
    data: Value,
    stop: Arc<AtomicBool>,
}

fn id(path: &str) -> Result<FileId, PrintFault> {
    let path = VirtualPath::new(path).map_err(|_| PrintFault::Failed(path.into()))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

/// Pictures come to the template as files, not as marks.
fn without_pictures(data: &mut Value) {
    match data {
        Value::Array(list) => list.iter_mut().for_each(without_pictures),
        Value::Object(map) => {
            map.retain(|key, _| !matches!(key.as_str(), "picture" | "swatch" | "map"));
            map.values_mut().for_each(without_pictures);
        }
        _ => {}
    }
}

impl Typesetter {
    pub(crate) fn new(
        sheet: &Sheet,
        photos: Photos,
        options: Options,
        stop: Arc<AtomicBool>,
    ) -> Result<Self, PrintFault> {
        let failed = |why: serde_json::Error| PrintFault::Failed(why.to_string());
        let mut data = serde_json::to_value(sheet).map_err(failed)?;
        without_pictures(&mut data);
        let covered: Vec<Coverage> = LETTERS.iter().map(|f| f.info().coverage.clone()).collect();
        let longest = match options.size {
            LetterSize::Normal => LONGEST_WORD,
            LetterSize::Large => LONGEST_LARGE,
        };
        let mut tidy = Tidy::new(&covered, longest);
        tidy.each(&mut data);
        let (pictures, drawn) = Pictures::of(sheet, options, &photos, &mut |text| tidy.text(text));
        let missing = tidy.missing();
        // The name outside the pages is not drawn with these letters.
        let mut whole = serde_json::json!({
            "sheet": data, "how": options, "missing": missing, "name": sheet.name, "photos": {},
            "pictures": pictures, "close": 0,
        });
        let mut files = HashMap::new();
        for (name, photo) in photos {
            let size = serde_json::json!([photo.width, photo.height]);
            whole["photos"][name.as_str()] = size;
            let path = format!("/{}.jpg", name.as_str());
            files.insert(id(&path)?, Bytes::new(photo.jpeg));
        }
        for (path, svg) in drawn {
            files.insert(id(&path)?, Bytes::new(svg.into_bytes()));
        }
        Typesetter {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(FontBook::from_fonts(LETTERS.iter())),
            template: Source::new(id("/sheet.typ")?, TEMPLATE.into()),
            files,
            data: whole,
            stop,
        }
        .set(0)
    }

    /// The same, its pages set more closely by so many steps.
    pub(crate) fn set(mut self, close: u8) -> Result<Self, PrintFault> {
        self.data["close"] = close.into();
        let data = serde_json::to_vec(&self.data);
        let data = data.map_err(|why| PrintFault::Failed(why.to_string()))?;
        self.files.insert(id("/sheet.json")?, Bytes::new(data));
        Ok(self)
    }

    pub(crate) fn stopped(&self) -> bool {
        self.stop.load(Ordering::Relaxed)
    }
}

impl World for Typesetter {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.book
    }

    fn main(&self) -> FileId {
        self.template.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        match id == self.template.id() {
            true => Ok(self.template.clone()),
            false => Err(FileError::AccessDenied),
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let found = self.files.get(&id).filter(|_| !self.stopped());
        found.cloned().ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        let letters = LETTERS.get(index).cloned();
        letters.filter(|_| !self.stopped())
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The signs of `text` that come out as boxes.
    fn boxed(text: &str) -> Vec<String> {
        let covered: Vec<Coverage> = LETTERS.iter().map(|f| f.info().coverage.clone()).collect();
        let mut tidy = Tidy::new(&covered, LONGEST_WORD);
        tidy.text(&mut text.to_string());
        tidy.missing()
    }

    #[test]
    fn each_face_that_the_sheet_chooses_is_there() {
        let mut names: Vec<String> = LETTERS
            .iter()
            .map(|font| {
                let info = font.info();
                let variant = info.variant;
                format!(
                    "{} {} {:?}",
                    info.family,
                    variant.weight.to_number(),
                    variant.style
                )
            })
            .collect();
        names.sort();
        let expected = [
            "DejaVu Sans Mono 400 Italic",
            "DejaVu Sans Mono 400 Normal",
            "DejaVu Sans Mono 700 Italic",
            "DejaVu Sans Mono 700 Normal",
            "Libertinus Serif 400 Italic",
            "Libertinus Serif 400 Normal",
            "Libertinus Serif 700 Italic",
            "Libertinus Serif 700 Normal",
            "Noto Sans 400 Italic",
            "Noto Sans 400 Normal",
            "Noto Sans 700 Italic",
            "Noto Sans 700 Normal",
        ];
        assert_eq!(names, expected);
    }

    #[test]
    fn what_is_typed_in_these_writings_has_letters() {
        let written = [
            "Zażółć gęślą jaźń, ŁÓDŹ",
            "Příliš žluťoučký kůň",
            "Árvíztűrő tükörfúrógép",
            "Ğüneş İğdır",
            "Größe weiß",
            "Þjóð, Ærø, Åse",
            "Việt Nam, ệ ữ",
            "Γειά σου, Ὀδυσσεύς",
            "Привет, Україна",
            "שלום",
            "سلام",
            "Հայերեն",
            "ქართული",
            "ລາວ",
            "½ ⅛ ⅜ ⅝ ⅞ ⅔ × ≈ ± − … „“ ‘’ « » → ↔ ☐ ☑ ✓ ° ′ ″ € №",
            "⒈ ⒛",
        ];
        for text in written {
            assert_eq!(boxed(text), Vec::<String>::new(), "{text}");
        }
        assert_eq!(boxed("漢"), ["U+6F22"]);
    }
}
