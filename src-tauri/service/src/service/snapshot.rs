//! A snapshot of a throw, from which another thread makes screens and files.

use crate::export::ExportFile;
use crate::paper::PrintJob;
use crate::photos;
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::faces::arrange::Arranger;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::Ruler;
use lapwork_core::show::drawing::{Drawing, Style};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Context};
use lapwork_core::show::{
    CommandAnswer, DraftAfter, Export, Head, Layouts, PlanDraft, PlanView, PrintOrder, Query,
    Sheet, View, ViewAnswer,
};
use lapwork_core::throw::Time;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words::Problem;
use lapwork_core::words::Words;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Whether a screen is so small that whoever executes commands makes it too: it takes less than a
/// millisecond at 60 × 60.
pub fn is_quick(query: &Query) -> bool {
    matches!(query, Query::Work { .. })
}

/// A throw, the words and the ruler as they were at one moment. What is done afterwards does
/// not change it, and nothing waits for it: it can be viewed on another thread.
#[derive(Clone)]
pub struct Snapshot {
    pub(super) journal: Arc<Journal>,
    pub(super) words: Words,
    pub(super) ruler: Ruler,
    pub(super) now: Time,
    pub(super) revision: u32,
}

/// A snapshot without its record, so that it can be made again where there is a copy of that.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Setting {
    language: String,
    ruler: Ruler,
    now: Time,
    revision: u32,
}

impl Snapshot {
    /// The snapshot that has this record and this setting.
    pub fn of(journal: Arc<Journal>, setting: &Setting) -> Snapshot {
        Snapshot {
            journal,
            words: Words::of(&setting.language),
            ruler: setting.ruler,
            now: setting.now,
            revision: setting.revision,
        }
    }

    /// All of it but the record.
    pub fn setting(&self) -> Setting {
        Setting {
            language: self.words.language().code.to_string(),
            ruler: self.ruler,
            now: self.now,
            revision: self.revision,
        }
    }

    fn context(&self) -> Context<'_> {
        Context {
            words: &self.words,
            ruler: self.ruler,
            now: self.now,
        }
    }

    /// What a screen shows of it.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn view(&self, query: &Query) -> Result<View, Problem> {
        show::answer(&self.journal, query, self.context())
    }

    /// The same, with its revision.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn answer(&self, query: &Query) -> Result<ViewAnswer, Problem> {
        Ok(ViewAnswer {
            revision: self.revision,
            view: self.view(query)?,
        })
    }

    /// The answer to a command that has just been done, with the screen it asks for.
    pub fn acted(&self, query: &Query) -> CommandAnswer {
        let (view, problem) = match self.view(query) {
            Ok(view) => (Some(view), None),
            Err(problem) => (None, Some(problem)),
        };
        CommandAnswer {
            revision: self.revision,
            head: self.head(),
            view,
            problem,
        }
    }

    /// That something in the program broke off.
    pub fn broke(&self) -> Problem {
        self.words.problem("broke", &[])
    }

    /// The plan of a throw not yet begun that is made after this one, whose faces it takes.
    pub fn draft_after(&self, draft: &PlanDraft, after: &DraftAfter) -> PlanView {
        let cloth = (after.prints.as_slice(), after.denims.as_slice());
        show::draft_after(self.journal.throw(), cloth, draft, self.context())
    }

    /// What goes on paper of it, and the name of the file that goes into.
    pub fn sheet(&self, order: &PrintOrder) -> (String, Sheet) {
        let key = match (order.card, order.blank) {
            (true, _) => "sheet-bench",
            (false, true) => "sheet-handout",
            (false, false) => "sheet-making",
        };
        let said = self.words.say(key, &[]);
        let called = format!("{} - {said}", self.journal.throw().name);
        let sheet = crate::paper::sheet(&self.journal, self.context(), order);
        (show::file_name(&called, "pdf"), sheet)
    }

    /// The same as a job for another thread or module, which makes the sheet from it.
    pub fn print_job(&self, order: &PrintOrder) -> PrintJob {
        PrintJob {
            record: self.journal.text(),
            language: self.words.language().code.to_string(),
            ruler: self.ruler,
            now: self.now,
            order: order.clone(),
        }
    }

    /// The files of an export; `photo` gives the bytes kept of a photo.
    ///
    /// The throw's own file is given here as the record stands; [`Service::export`] gives it
    /// to the byte.
    ///
    /// [`Service::export`]: super::Service::export
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn export(
        &self,
        export: &Export,
        photo: &dyn Fn(&PhotoId) -> Option<Vec<u8>>,
    ) -> Result<Vec<ExportFile>, Problem> {
        let (journal, context) = (&*self.journal, self.context());
        let throw = journal.throw();
        match export {
            Export::Throw => Ok(vec![ExportFile {
                name: show::file_name(&throw.name, "jsonl"),
                bytes: journal.text().into_bytes(),
            }]),
            Export::Pictures => {
                let cloth = |name: &PhotoId| {
                    let kept = photo(name)?;
                    let small = photos::for_paper(&kept, photos::SWATCH_SIDE, false)?;
                    Some(BASE64_STANDARD.encode(small.jpeg))
                };
                let file = |drawing: Drawing| {
                    let svg = drawing.svg(journal, Style::Colour, &cloth, context)?;
                    Ok(ExportFile {
                        name: drawing.file_name(throw, context),
                        bytes: svg.into_bytes(),
                    })
                };
                Drawing::all(throw).into_iter().map(file).collect()
            }
            Export::Tables => {
                let file = |table: Table| ExportFile {
                    name: table.file_name(throw, context),
                    bytes: table.csv(journal, context).into_bytes(),
                };
                Ok(Table::ALL.into_iter().map(file).collect())
            }
            Export::Story { zone } => {
                let called = format!("{} - {}", throw.name, context.words.say("ui-story", &[]));
                let photo = |name: &PhotoId| photo(name).map(|bytes| BASE64_STANDARD.encode(bytes));
                let page = show::story_page(&show::story(journal, zone, context), photo, context);
                Ok(vec![ExportFile {
                    name: show::file_name(&called, "html"),
                    bytes: page.into_bytes(),
                }])
            }
        }
    }

    /// How far it is.
    pub fn head(&self) -> Head {
        show::head(&self.journal, self.context())
    }

    /// What a search for layouts of it has come to, as cards to choose from, after `done` of
    /// `all` rounds of work.
    pub fn layouts(&self, wishes: Wishes, found: &[Arranger], rounds: (bool, u32)) -> Layouts {
        show::layouts(&self.journal, wishes, found, rounds, self.context())
    }

    /// The record itself.
    pub fn journal(&self) -> &Arc<Journal> {
        &self.journal
    }
}
