//! What is handed on as files, or goes on paper.

use super::Service;
use crate::disk::DiskPath;
use crate::export::ExportFile;
use crate::store::{StoreError, ThrowId};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use lapwork_core::log::journal::Journal;
use lapwork_core::show::drawing::{Drawing, Style};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Sheet};
use lapwork_core::show::{Export, Exported, PrintOrder, ZoneName};
use lapwork_core::throw::Time;
use lapwork_core::throw::photos::PhotoId;
use lapwork_core::words::Arg;
use lapwork_core::words::Problem;

impl Service {
    /// The files of something to be handed on, made from what is on the disk.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn export(
        &mut self,
        id: &str,
        hand: &Export,
        now: Time,
    ) -> Result<Vec<ExportFile>, Problem> {
        match hand {
            Export::Throw => {
                let called = self.with(id, now, |journal, _| Ok(journal.throw().name.clone()))?;
                let bytes = ThrowId::parse(id).and_then(|id| self.own_bytes(&id));
                let file = ExportFile {
                    name: show::file_name(&called, "jsonl"),
                    bytes: bytes.map_err(|error| self.message(&error))?,
                };
                Ok(vec![file])
            }
            Export::Pictures => self.with(id, now, |journal, lens| {
                let throw = journal.throw();
                let file = |drawing: Drawing| {
                    let svg = drawing.svg(journal, Style::Colour, lens)?;
                    Ok(ExportFile {
                        name: drawing.file_name(throw, lens),
                        bytes: svg.into_bytes(),
                    })
                };
                Drawing::all(throw).into_iter().map(file).collect()
            }),
            Export::Tables => self.with(id, now, |journal, lens| {
                let file = |table: Table| ExportFile {
                    name: table.file_name(journal.throw(), lens),
                    bytes: table.csv(journal, lens).into_bytes(),
                };
                Ok(Table::ALL.into_iter().map(file).collect())
            }),
            Export::Story { zone } => Ok(vec![self.story_page(id, zone, now)?]),
        }
    }

    /// A throw's file to the byte, as it is there; the record as it is known here where that
    /// is gone or is another.
    fn own_bytes(&self, id: &ThrowId) -> Result<Vec<u8>, StoreError> {
        let there = self.store.bytes(id);
        let Some(opened) = self.open.get(id).filter(|_| self.store.claimed()) else {
            return there;
        };
        let known = opened.journal.text().into_bytes();
        Ok(match there {
            Ok(bytes)
                if Journal::read(&bytes)
                    .is_ok_and(|read| read.journal.text().into_bytes() == known) =>
            {
                bytes
            }
            _ => known,
        })
    }

    /// What goes on paper of a throw, and the name of the file it goes into.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn sheet(
        &mut self,
        id: &str,
        order: &PrintOrder,
        now: Time,
    ) -> Result<(String, Sheet), Problem> {
        self.with(id, now, |journal, lens| {
            let key = if order.card {
                "sheet-bench"
            } else {
                "sheet-making"
            };
            let called = format!("{} - {}", journal.throw().name, lens.words.say(key, &[]));
            let sheet = crate::paper::sheet(journal, lens, order);
            Ok((show::file_name(&called, "pdf"), sheet))
        })
    }

    /// The story as one page, with the photos that are there in it.
    fn story_page(&mut self, id: &str, zone: &ZoneName, now: Time) -> Result<ExportFile, Problem> {
        let (story, called) = self.with(id, now, |journal, lens| {
            let called = lens.words.say("ui-story", &[]);
            let called = format!("{} - {called}", journal.throw().name);
            Ok((show::story(journal, zone, lens), called))
        })?;
        let id = ThrowId::parse(id).map_err(|error| self.message(&error))?;
        let photo = |photo: &PhotoId| {
            let bytes = self.store.photo(&id, photo).ok().flatten()?;
            Some(BASE64_STANDARD.encode(bytes))
        };
        Ok(ExportFile {
            name: show::file_name(&called, "html"),
            bytes: show::story_page(&story, photo, self.lens(now)).into_bytes(),
        })
    }

    /// That a sheet could not be printed.
    pub fn print_failed(&self, why: String) -> Problem {
        self.words.problem("print", &[("why", why.into())])
    }

    /// What to say of files handed on, or of what stood in the way.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn exported(&self, put: Result<Vec<DiskPath>, StoreError>) -> Result<Exported, Problem> {
        let put = put.map_err(|error| self.message(&error))?;
        let shown = |path: &DiskPath| Arg::Text(path.to_string());
        let said = match put.as_slice() {
            [] => None,
            [one] => Some(self.words.say("handed", &[("file", shown(one))])),
            [first, ..] => {
                let folder = first.parent().unwrap_or_else(|| first.clone());
                let args = [("n", put.len().into()), ("folder", shown(&folder))];
                Some(self.words.say("handed-many", &args))
            }
        };
        Ok(Exported { said })
    }
}
