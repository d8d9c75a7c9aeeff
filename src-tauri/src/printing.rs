//! Printing: from the content of a sheet to the bytes of a PDF.
//!
//! A print runs on a thread of its own, so that the window and the service stay free. It reports
//! its progress, and a [`Press`] stops it. Only one print runs at a time: a second one stops the
//! first.

use jiff::tz::TimeZone;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::show::Sheet;
use lapwork_core::show::{PrintOrder, Printing, ZoneName};
use lapwork_service::{paper, photos};
use lapwork_sheet::{Options, Photos, PrintFault, Progress};
use std::ops::ControlFlow;
use std::sync::atomic::{AtomicU64, Ordering};

/// Lets the current print be stopped.
#[derive(Debug, Default)]
pub struct Press {
    /// The current print; a print whose number is not this one stops.
    turn: AtomicU64,
}

/// The number of a print, which it has from the moment it was asked for.
#[derive(Debug, Clone, Copy)]
pub struct PrintTurn(u64);

impl Press {
    /// Begin a print: the one before stops, and from now on [`Press::stop`] stops this one, also
    /// while its sheet is still being made.
    pub fn begin(&self) -> PrintTurn {
        PrintTurn(self.turn.fetch_add(1, Ordering::Relaxed) + 1)
    }

    /// Stop the current print.
    pub fn stop(&self) {
        self.turn.fetch_add(1, Ordering::Relaxed);
    }

    /// Print; [`PrintFault::Cancelled`] once it was stopped. `photo` gives the bytes kept of a
    /// photo, which are made small one after another. `tell` is called with the progress.
    ///
    /// # Errors
    /// The [`PrintFault`].
    pub fn print(
        &self,
        turn: PrintTurn,
        sheet: &Sheet,
        order: &PrintOrder,
        photo: &dyn Fn(&PhotoId) -> Option<Vec<u8>>,
        tell: &dyn Fn(Printing),
    ) -> Result<Vec<u8>, PrintFault> {
        let mine = || self.turn.load(Ordering::Relaxed) == turn.0;
        let all = Progress::ALL;
        let mut found_photos = Photos::new();
        let mut reported = 0;
        tell(Printing {
            done: reported,
            all,
        });
        for (name, side) in paper::photos(sheet) {
            if !mine() {
                return Err(PrintFault::Cancelled);
            }
            let found = photo(&name).and_then(|kept| photos::for_paper(&kept, side, order.black));
            found_photos.extend(found.map(|photo| (name, printable(photo))));
        }
        lapwork_sheet::print(sheet, found_photos, Options::from(order), &mut |now| {
            if !mine() {
                return ControlFlow::Break(());
            }
            // The typesetter asks more often than it has news.
            let done = now.done();
            if done > reported {
                reported = done;
                tell(Printing { done, all });
            }
            ControlFlow::Continue(())
        })
    }
}

/// A photo as the sheet takes it.
fn printable(photo: photos::PaperPhoto) -> lapwork_sheet::PrintPhoto {
    let photos::PaperPhoto {
        jpeg,
        width,
        height,
    } = photo;
    lapwork_sheet::PrintPhoto {
        jpeg,
        width,
        height,
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
    use lapwork_core::show::{Context, PrintPaper, PrintUnits};
    use lapwork_core::words::Words;
    use lapwork_service::paper::sheet;
    use std::sync::Mutex;

    #[test]
    fn a_stopped_print_gives_nothing_and_the_next_one_goes_on() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: 1_800_000_000_000,
        };
        let order = PrintOrder {
            card: true,
            blank: false,
            units: PrintUnits::Both,
            paper: PrintPaper::A4,
            large: false,
            black: false,
            story: false,
            zone: ZoneName::default(),
        };
        let sheet = sheet(&demo::throw(context.now), context, &order);
        let press = Press::default();
        // It is stopped once it has reported that it is running.
        let reported = Mutex::new(Vec::new());
        let stop = |now: Printing| {
            reported.lock().unwrap().push(now);
            if now.done > 0 {
                press.stop();
            }
        };
        let stopped = press.print(press.begin(), &sheet, &order, &|_| None, &stop);
        assert_eq!(stopped, Err(PrintFault::Cancelled));
        let seen = reported.lock().unwrap().clone();
        assert_eq!(seen[0].done, 0);
        assert!(seen.iter().all(|now| now.done < now.all), "{seen:?}");
        // One that is stopped before its sheet is made is not printed either.
        let early = press.begin();
        press.stop();
        let stopped = press.print(early, &sheet, &order, &|_| None, &|_| {});
        assert_eq!(stopped, Err(PrintFault::Cancelled));
        let reported = Mutex::new(Vec::new());
        let tell = |now: Printing| reported.lock().unwrap().push(now.done);
        let made = press
            .print(press.begin(), &sheet, &order, &|_| None, &tell)
            .unwrap();
        assert!(made.starts_with(b"%PDF-"));
        let reported = reported.lock().unwrap();
        assert!(reported.len() > 2 && reported.is_sorted(), "{reported:?}");
    }
}
