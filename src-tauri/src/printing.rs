//! The printed sheet: from what goes on paper to the bytes of a PDF.
//!
//! The window's print runs on the thread of its own call, so that the window and the service
//! are free; how far it is and whether it is to stop goes through a [`Press`]. One print
//! at a time: a second waits for nobody, it takes the press over and the first is stopped.

use jiff::tz::TimeZone;
use lapwork_core::show::Sheet;
use lapwork_core::show::{PrintOrder, PrintPaper, Printing, ZoneName};
use lapwork_core::throw::photos::PhotoId;
use lapwork_service::photos;
use lapwork_sheet::{Inks, Kind, Options, Paper, Photos, PrintFault, Progress, Size};
use std::ops::ControlFlow;
use std::sync::atomic::{AtomicU32, AtomicU64, Ordering};

/// How far the print in hand is, and whether it is to stop.
#[derive(Debug, Default)]
pub struct Press {
    /// The print in hand; a print whose number is not this one stops.
    turn: AtomicU64,
    /// Steps done, one more; 0 when nothing is printed.
    step: AtomicU32,
}

impl Press {
    /// How far it is; nothing if nothing is printed.
    pub fn look(&self) -> Option<Printing> {
        let step = self.step.load(Ordering::Relaxed);
        (step > 0).then(|| Printing {
            done: step - 1,
            all: Progress::ALL,
        })
    }

    /// Stop the print in hand.
    pub fn stop(&self) {
        self.turn.fetch_add(1, Ordering::Relaxed);
        self.step.store(0, Ordering::Relaxed);
    }

    /// Print; [`PrintFault::Cancelled`] once it was stopped. `photo` gives the bytes kept of a
    /// photo, which are made small one after another.
    ///
    /// # Errors
    /// The [`PrintFault`].
    pub fn print(
        &self,
        sheet: &Sheet,
        order: &PrintOrder,
        photo: &dyn Fn(&PhotoId) -> Option<Vec<u8>>,
    ) -> Result<Vec<u8>, PrintFault> {
        let own = self.turn.fetch_add(1, Ordering::Relaxed) + 1;
        let mine = || self.turn.load(Ordering::Relaxed) == own;
        let mut photos = Photos::new();
        for name in &sheet.photos {
            if !mine() {
                return Err(PrintFault::Cancelled);
            }
            self.step.store(1, Ordering::Relaxed);
            let found = photo(name).and_then(|kept| photos::for_paper(&kept, order.black));
            photos.extend(found.map(|photo| (name.clone(), printable(photo))));
        }
        let made = lapwork_sheet::print(sheet, photos, options(order), &mut |now| {
            if !mine() {
                return ControlFlow::Break(());
            }
            self.step.store(now.done() + 1, Ordering::Relaxed);
            ControlFlow::Continue(())
        });
        if mine() {
            self.step.store(0, Ordering::Relaxed);
        }
        made
    }
}

/// A photo as the sheet takes it.
fn printable(photo: photos::PaperPhoto) -> lapwork_sheet::Photo {
    let photos::PaperPhoto {
        jpeg,
        width,
        height,
    } = photo;
    lapwork_sheet::Photo {
        jpeg,
        width,
        height,
    }
}

/// How an order is printed.
pub fn options(order: &PrintOrder) -> Options {
    Options {
        paper: match order.paper {
            PrintPaper::A4 => Paper::A4,
            PrintPaper::Letter => Paper::Letter,
        },
        size: if order.large {
            Size::Large
        } else {
            Size::Normal
        },
        ink: if order.black {
            Inks::Black
        } else {
            Inks::Colour
        },
        kind: if order.card {
            Kind::Bench
        } else {
            Kind::Making
        },
    }
}

/// The time zone that the system is set to; UTC where it does not say.
pub fn zone() -> ZoneName {
    let system = TimeZone::system();
    let rule = || std::env::var("TZ").ok();
    ZoneName::named(
        system
            .iana_name()
            .map(str::to_string)
            .or_else(rule)
            .unwrap_or_default(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use lapwork_core::demo;
    use lapwork_core::measure::Ruler;
    use lapwork_core::show::Context;
    use lapwork_core::words::Words;
    use lapwork_service::paper::sheet;

    #[test]
    fn a_stopped_print_gives_nothing_and_the_next_one_goes_on() {
        let words = Words::english();
        let lens = Context {
            words: &words,
            ruler: Ruler::default(),
            now: 1_800_000_000_000,
        };
        let order = PrintOrder {
            card: true,
            paper: PrintPaper::A4,
            large: false,
            black: false,
            story: false,
            zone: ZoneName::default(),
        };
        let sheet = sheet(&demo::throw(lens.now), lens, &order);
        let press = Press::default();
        assert_eq!(press.look(), None);
        let (stopped, seen) = std::thread::scope(|scope| {
            let first = scope.spawn(|| press.print(&sheet, &order, &|_| None));
            let seen = loop {
                if let Some(seen) = press.look() {
                    break seen;
                }
                std::thread::yield_now();
            };
            press.stop();
            (first.join().unwrap(), seen)
        });
        assert_eq!(stopped, Err(PrintFault::Cancelled));
        assert!(seen.done < seen.all);
        assert_eq!(press.look(), None);
        let made = press.print(&sheet, &order, &|_| None).unwrap();
        assert!(made.starts_with(b"%PDF-"));
        assert_eq!(press.look(), None);
    }
}
