//! The search for layouts, on a thread of its own, so that the window is never blocked.
//!
//! One search at a time. It goes round by round over several seeds, keeps the best of
//! each where the window can look at it, and ends when asked to, when all have settled,
//! or after [`MOST_ROUNDS`]. Beginning another gives up the one before; a round under
//! way ends unseen.

use lapwork_core::faces::arrange::Arranger;
use lapwork_core::throw::Throw;
use lapwork_core::throw::wishes::Wishes;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

/// Layouts shown side by side.
const SEVERAL: u64 = 4;
/// Rounds after which hardly anything is gained (see the bench `faces`).
pub const MOST_ROUNDS: u32 = 12;

/// One search.
struct Search {
    id: String,
    wishes: Wishes,
    stop: Arc<AtomicBool>,
    running: Arc<AtomicBool>,
    found: Arc<Mutex<Vec<Arranger>>>,
}

impl Drop for Search {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

/// The search under way, or the last one.
#[derive(Default)]
pub struct Arranging {
    search: Option<Search>,
}

/// What a search has come to.
pub struct Found {
    /// The throw it is for.
    pub id: String,
    /// What it looks for.
    pub wishes: Wishes,
    /// Still at it.
    pub running: bool,
    /// The best of each seed.
    pub layouts: Vec<Arranger>,
}

impl Arranging {
    /// Begin to look for layouts of a throw.
    pub fn start(&mut self, id: &str, throw: Throw, wishes: Wishes, seed: u32) {
        let search = Search {
            id: id.to_string(),
            wishes,
            stop: Arc::default(),
            running: Arc::new(AtomicBool::new(true)),
            found: Arc::default(),
        };
        let (stop, running) = (search.stop.clone(), search.running.clone());
        let found = search.found.clone();
        std::thread::spawn(move || {
            look_for(&throw, wishes, seed, &stop, &found);
            running.store(false, Ordering::Release);
        });
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
    pub fn found(&self) -> Option<Found> {
        let search = self.search.as_ref()?;
        // Asked first: what was found before it ended is then all there is.
        let running = search.running.load(Ordering::Acquire);
        let layouts = search.found.lock().unwrap_or_else(PoisonError::into_inner);
        Some(Found {
            id: search.id.clone(),
            wishes: search.wishes,
            running,
            layouts: layouts.clone(),
        })
    }
}

fn look_for(
    throw: &Throw,
    wishes: Wishes,
    seed: u32,
    stop: &AtomicBool,
    found: &Mutex<Vec<Arranger>>,
) {
    let stopped = || stop.load(Ordering::Relaxed);
    let publish = |all: &[Arranger]| {
        *found.lock().unwrap_or_else(PoisonError::into_inner) = all.to_vec();
    };
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
    use lapwork_core::measure::Count;
    use std::time::{Duration, Instant};

    #[test]
    fn it_finds_several_and_stops_when_told() {
        let throw = lapwork_core::demo::throw(1_800_000_000_000).throw().clone();
        let wishes = Wishes {
            front: Count::from(20),
            back: Count::from(20),
            ..Wishes::default()
        };
        let mut arranging = Arranging::default();
        assert!(arranging.found().is_none());
        arranging.start("a", throw.clone(), wishes, 1);
        let begun = Instant::now();
        loop {
            let found = arranging.found().expect("a search");
            if found.layouts.len() == SEVERAL as usize {
                break;
            }
            assert!(begun.elapsed() < Duration::from_secs(60), "nothing found");
            std::thread::sleep(Duration::from_millis(2));
        }
        arranging.stop();
        let found = arranging.found().expect("a search");
        assert!(!found.running);
        assert_eq!((found.id.as_str(), found.wishes), ("a", wishes));
        let costs: std::collections::BTreeSet<i64> =
            found.layouts.iter().map(Arranger::cost).collect();
        assert!(costs.len() > 1, "different seeds, different layouts");
    }
}
