//! All that the typesetter can see: the template, the data, the pictures and photos, the letters.

use crate::pictures::Pictures;
use crate::tidy::{Coverage, LONGEST_LARGE, LONGEST_WORD, Tidy};
use crate::{LetterSize, Options, Photos, PrintFault};
use lapwork_core::show::Sheet;
use serde_json::Value;
use std::collections::HashMap;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, LazyLock};
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

const TEMPLATE: &str = include_str!("sheet.typ");

/// Letters, the first choice first: Noto Sans, and for what it lacks the serif and the
/// monospaced letters that come with the typesetter.
static LETTERS: LazyLock<Vec<Font>> = LazyLock::new(|| {
    let own = [
        notosans::REGULAR_TTF,
        notosans::BOLD_TTF,
        notosans::ITALIC_TTF,
        notosans::BOLD_ITALIC_TTF,
    ];
    own.into_iter()
        .chain(typst_assets::fonts())
        .flat_map(|bytes| Font::iter(Bytes::new(bytes)))
        .filter(|font| {
            let family = font.info().family.to_string();
            ["Noto Sans", "Libertinus Serif", "DejaVu Sans Mono"].contains(&family.as_str())
        })
        .collect()
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
