//! The layout search, which runs in parallel with everything else.
//!
//! Only one search runs at a time. It improves several seeds round by round and reports the best of
//! each. It ends when it is asked to, when no seed improves any more, or after [`MOST_ROUNDS`].
//! Starting another search cancels the one before; its current round is not reported.

use crate::host::Runner;
use crate::service::Snapshot;
use lapwork_core::show::Layouts;
use lapwork_core::words::Problem;
use lapwork_core::{faces::arrange::Arranger, throw::wishes::Wishes};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

/// Layouts shown side by side.
const SEVERAL: u64 = 4;
/// Rounds after which hardly anything is gained (see the bench `faces`).
pub const MOST_ROUNDS: u32 = 12;

/// One search.
struct Search {
    snapshot: Snapshot,
    wishes: Wishes,
    stop: Arc<AtomicBool>,
    running: Arc<AtomicBool>,
    found: Arc<Mutex<Vec<Arranger>>>,
}

impl Search {
    fn layouts(&self, running: bool, found: &[Arranger]) -> Layouts {
        let rounds = (running, MOST_ROUNDS);
        self.snapshot.layouts(self.wishes, found, rounds)
    }
}

/// The search under way, or the last one.
#[derive(Default)]
pub struct LayoutSearch {
    search: Option<Arc<Search>>,
}

impl Drop for LayoutSearch {
    fn drop(&mut self) {
        self.stop();
    }
}

impl LayoutSearch {
    /// Begin to look for layouts of a throw; `report` is called whenever there is more. `end` is
    /// given what was found once nothing more comes, or what to say where the search broke off.
    pub fn start(
        &mut self,
        runner: &dyn Runner,
        snapshot: Snapshot,
        wishes: Wishes,
        seed: u32,
        report: impl Fn(Layouts) + Send + 'static,
        end: impl FnOnce(Result<Layouts, Problem>) + Send + 'static,
    ) {
        self.stop();
        let search = Arc::new(Search {
            snapshot,
            wishes,
            stop: Arc::default(),
            running: Arc::new(AtomicBool::new(true)),
            found: Arc::default(),
        });
        let own = Arc::clone(&search);
        runner.run(Box::new(move || {
            let publish = |all: &[Arranger]| {
                *own.found.lock().unwrap_or_else(PoisonError::into_inner) = all.to_vec();
                report(own.layouts(true, all));
            };
            let found = catch_unwind(AssertUnwindSafe(|| look_for(&own, seed, publish)));
            own.running.store(false, Ordering::Release);
            end(match found {
                Ok(()) => {
                    let found = own.found.lock().unwrap_or_else(PoisonError::into_inner);
                    Ok(own.layouts(false, &found))
                }
                Err(_) => Err(own.snapshot.broke()),
            });
        }));
        self.search = Some(search);
    }

    /// Stop; what was found stays.
    pub fn stop(&mut self) {
        if let Some(search) = &self.search {
            search.stop.store(true, Ordering::Relaxed);
            search.running.store(false, Ordering::Release);
        }
    }

    /// What was found so far, if anything was looked for.
    pub fn layouts(&self) -> Option<Layouts> {
        let search = self.search.as_ref()?;
        // Asked first: what was found before it ended is then all there is.
        let running = search.running.load(Ordering::Acquire);
        let found = search.found.lock().unwrap_or_else(PoisonError::into_inner);
        Some(search.layouts(running, &found))
    }
}

fn look_for(search: &Search, seed: u32, publish: impl Fn(&[Arranger])) {
    let stopped = || search.stop.load(Ordering::Relaxed);
    let (throw, wishes) = (search.snapshot.journal().throw(), search.wishes);
    let mut all: Vec<Arranger> = Vec::new();
    for n in 0..SEVERAL {
        if stopped() {
            return;
        }
        // Far apart, so that the next four seeds give four others.
        let seed = u64::from(seed) << 8 | n;
        let mut first = Arranger::new(throw, wishes, seed);
        first.round();
        all.push(first);
        publish(&all);
    }
    for _ in 1..MOST_ROUNDS {
        for arranger in &mut all {
            if stopped() {
                return;
            }
            arranger.round();
        }
        if stopped() {
            return;
        }
        publish(&all);
        if all.iter().all(Arranger::settled) {
            return;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desktop;
    use crate::service::Service;
    use lapwork_core::measure::Count;
    use lapwork_core::show::ShelfCommand;
    use std::sync::mpsc::channel;
    use std::time::Duration;

    const NOW: i64 = 1_800_000_000_000;

    /// A service with the demo throw.
    fn begun(folder: &tempfile::TempDir) -> (Service, String) {
        let store = desktop::store(folder.path());
        let mut service = Service::new(store, desktop::host());
        let id = service
            .shelf_command(&ShelfCommand::Demo, NOW)
            .unwrap()
            .id
            .unwrap();
        (service, id)
    }

    const WISHES: fn() -> Wishes = || Wishes {
        front: Count::from(20),
        back: Count::from(20),
        ..Wishes::default()
    };

    #[test]
    fn it_tells_several_and_stops_when_told() {
        let folder = tempfile::tempdir().unwrap();
        let (mut service, id) = begun(&folder);
        assert_eq!(service.stop_arranging(), None);
        let (sender, receiver) = channel();
        let (end, ended) = channel();
        let report = move |layouts| {
            // Told after the test has ended, nobody listens.
            let _ = sender.send(layouts);
        };
        let end = move |found| {
            let _ = end.send(found);
        };
        service.arrange(&id, WISHES(), 1, report, end, NOW).unwrap();
        let wait = Duration::from_secs(60);
        let several = std::iter::from_fn(|| receiver.recv_timeout(wait).ok())
            .find(|found| found.cards.len() == SEVERAL as usize);
        let several = several.expect("several are found");
        assert!(several.running);
        let kinds: std::collections::BTreeSet<String> = several
            .cards
            .iter()
            .map(|card| format!("{card:?}"))
            .collect();
        assert!(kinds.len() > 1, "different seeds, different layouts");
        let stopped = service.stop_arranging().unwrap();
        assert!(!stopped.running && stopped.cards.len() == SEVERAL as usize);
        // It ends once the round under way has, and nothing more comes.
        let found = ended.recv_timeout(wait).unwrap().unwrap();
        assert!(!found.running && found.cards.len() == SEVERAL as usize);
        while receiver.try_recv().is_ok() {}
        assert!(receiver.recv().is_err(), "nobody is left to tell");
    }

    #[test]
    fn a_search_that_breaks_off_says_so_and_another_can_begin() {
        let folder = tempfile::tempdir().unwrap();
        let (mut service, id) = begun(&folder);
        let wait = Duration::from_secs(60);
        let (end, ended) = channel();
        let breaks = |_| panic!("on purpose");
        let at_end = move |found| end.send(found).unwrap();
        service
            .arrange(&id, WISHES(), 1, breaks, at_end, NOW)
            .unwrap();
        let problem = ended.recv_timeout(wait).unwrap().unwrap_err();
        assert_eq!(problem.code, "broke");
        assert!(!service.stop_arranging().unwrap().running);
        // A small throw, so that this one soon comes to its own end.
        let small = ShelfCommand::Begin {
            action: lapwork_core::demo::begin("Small", 4, 5),
            pile: Vec::new(),
        };
        let id = service.shelf_command(&small, NOW).unwrap().id.unwrap();
        let (end, ended) = channel();
        let at_end = move |found| end.send(found).unwrap();
        service
            .arrange(&id, WISHES(), 1, |_| {}, at_end, NOW)
            .unwrap();
        let found = ended.recv_timeout(wait).unwrap().unwrap();
        assert_eq!(found.cards.len(), SEVERAL as usize);
    }
}
