//! Commands done to a throw, and the answers to its queries.

use super::{Service, Snapshot};
use crate::store::{Opened, Place, StoreError, ThrowId};
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{self, Context};
use lapwork_core::show::{CommandAnswer, Head, Layouts, Query, Request, View};
use lapwork_core::throw::Time;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words::Arg;
use lapwork_core::words::Problem;
use std::sync::Arc;

impl Service {
    /// See that a throw has been read.
    pub(super) fn reach(&mut self, id: &ThrowId, now: Time) -> Result<(), StoreError> {
        if self.store.claimed() && self.open.contains_key(id) {
            return Ok(());
        }
        self.open.remove(id);
        let opened = match self.acknowledged.contains_key(id) && self.store.claimed() {
            true => self.open_again(id, now)?,
            false => self.store.open(id, now)?,
        };
        if let Some(mended) = &opened.mended {
            let args = [
                ("bytes", mended.bytes.into()),
                ("count", opened.journal.len().into()),
                ("copy", Arg::Text(mended.copy.to_string())),
            ];
            let notice = self.words.problem("torn", &args);
            self.mended.insert(id.clone(), notice);
        }
        self.open.insert(id.clone(), opened);
        Ok(())
    }

    /// Read a throw again of which something was acknowledged since the start. Where that is
    /// not all there, the record is put back as it was.
    fn open_again(&mut self, id: &ThrowId, now: Time) -> Result<Opened, StoreError> {
        let opened = self.store.open(id, now);
        let Some(known) = self.acknowledged.get(id) else {
            return opened;
        };
        let lost = match &opened {
            Ok(opened) => {
                let pairs = known.entries().zip(opened.journal.entries());
                known.name() != opened.journal.name()
                    || opened.journal.len() < known.len()
                    || pairs.into_iter().any(|((a, _), (b, _))| a != b)
            }
            Err(error) => matches!(
                error,
                StoreError::Missing { .. }
                    | StoreError::NoSuchThrow
                    | StoreError::Damaged { .. }
                    | StoreError::TooLarge { .. }
            ),
        };
        if lost {
            let mut known = Opened::remembered(known.clone());
            let error = self.store.put_back(id, &mut known, now);
            if let StoreError::Changed { .. } = error {
                self.acknowledged.remove(id);
                self.open.insert(id.clone(), known);
            }
            return Err(self.offered(error, now));
        }
        if opened.is_ok() {
            self.acknowledged.remove(id);
        }
        opened
    }

    /// Read a throw again before anything else is done to it, and see then that what was
    /// acknowledged is there.
    pub(super) fn read_again(&mut self, id: &ThrowId) {
        if let Some(opened) = self.open.remove(id)
            && self.store.claimed()
        {
            self.acknowledged.insert(id.clone(), opened.journal);
        }
    }

    /// See that a throw has been read and can be added to: where a torn end or a failing
    /// disk stood in the way, it is tried anew.
    pub(super) fn work_on(&mut self, id: &ThrowId, now: Time) -> Result<(), StoreError> {
        if self.open.get(id).is_some_and(|o| o.torn() || o.held()) {
            self.read_again(id);
        }
        self.reach(id, now)?;
        let path = || self.store.throw_file(Place::Throws, id);
        match self.open.get(id) {
            Some(opened) if opened.torn() => Err(StoreError::Torn { path: path() }),
            Some(opened) if opened.held() => Err(StoreError::Held { path: path() }),
            _ => Ok(()),
        }
    }

    /// Read a throw if need be, then do something with it.
    pub(super) fn with<T>(
        &mut self,
        id: &str,
        now: Time,
        ask: impl FnOnce(&Journal, Context<'_>) -> Result<T, Problem>,
    ) -> Result<T, Problem> {
        let reached = ThrowId::parse(id).and_then(|id| self.reach(&id, now).map(|()| id));
        let id = reached.map_err(|error| self.message(&error))?;
        let opened = self.open.get(&id).ok_or(StoreError::NoSuchThrow);
        let opened = opened.map_err(|error| self.message(&error))?;
        ask(&opened.journal, self.context(now))
    }

    /// What a screen shows of a throw.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn view(&mut self, id: &str, query: &Query, now: Time) -> Result<View, Problem> {
        self.with(id, now, |journal, context| {
            show::answer(journal, query, context)
        })
    }

    /// A snapshot of a throw as it is now.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn snapshot(&mut self, id: &str, now: Time) -> Result<Snapshot, Problem> {
        self.with(id, now, |_, _| Ok(()))?;
        let opened = ThrowId::parse(id).ok().and_then(|id| self.open.get(&id));
        let opened = opened.ok_or(StoreError::NoSuchThrow);
        let opened = opened.map_err(|error| self.message(&error))?;
        Ok(Snapshot {
            journal: Arc::clone(&opened.journal),
            words: self.words.clone(),
            ruler: self.prefs.ruler,
            now,
            revision: self.revision,
        })
    }

    /// Begin to search for layouts of a throw; another search is cancelled. `tell` is called
    /// whenever there is more; `end` is given what was found once nothing more comes, or the
    /// [`Problem`] where the search broke off.
    ///
    /// # Errors
    /// The [`Problem`] to show instead; neither is then called.
    pub fn arrange(
        &mut self,
        id: &str,
        wishes: Wishes,
        seed: u32,
        tell: impl Fn(Layouts) + Send + 'static,
        end: impl FnOnce(Result<Layouts, Problem>) + Send + 'static,
        now: Time,
    ) -> Result<(), Problem> {
        let snapshot = self.snapshot(id, now)?;
        let runner = &*self.host.runner;
        self.search.start(runner, snapshot, wishes, seed, tell, end);
        Ok(())
    }

    /// Stop the layout search; returns what it found, or nothing if none was running.
    pub fn stop_arranging(&mut self) -> Option<Layouts> {
        self.search.stop();
        self.search.layouts()
    }

    /// Do something to a throw. It is on the disk when this returns.
    ///
    /// # Errors
    /// The [`Problem`] to show; the throw is then as it was.
    pub fn act(&mut self, id: &str, request: &Request, now: Time) -> Result<Head, Problem> {
        self.claim().map_err(|error| self.message(&error))?;
        let throw = ThrowId::parse(id).and_then(|id| self.work_on(&id, now).map(|()| id));
        let throw = throw.map_err(|error| self.message(&error))?;
        let entry = self.with(id, now, |journal, context| {
            let proposed = match request {
                Request::Act { action } => journal.propose(action, now),
                Request::Undo => journal.propose_undo(now),
                Request::Redo => journal.propose_redo(now),
            };
            proposed.map_err(|refusal| show::rejection(&refusal, Some(journal.throw()), context))
        })?;
        if let Some(opened) = self.open.get_mut(&throw) {
            let kept = self.store.append(&throw, opened, &entry);
            let kept = kept.map(|()| opened.accept(entry).is_some());
            match kept {
                Ok(true) => self.changed(),
                // The file has an entry more than is known here.
                Ok(false) => {
                    self.open.remove(&throw);
                }
                // What is known here is what is there, or nothing was done at all.
                Err(
                    error @ (StoreError::Changed { .. }
                    | StoreError::ChangedLeft { .. }
                    | StoreError::Away { .. }
                    | StoreError::TooLarge { .. }
                    | StoreError::Unreadable),
                ) => {
                    let error = self.offered(error, now);
                    return Err(self.message(&error));
                }
                // What is on the disk is what counts, and it is read again before the
                // next step.
                Err(error) => {
                    self.read_again(&throw);
                    return Err(self.message(&error));
                }
            }
        }
        self.with(id, now, |journal, context| Ok(show::head(journal, context)))
    }

    /// Do something to a throw, as [`Service::act`] does, and make its view afterwards.
    ///
    /// # Errors
    /// The [`Problem`] to show if it was not done; that it cannot be viewed is in the
    /// answer.
    pub fn act_and_view(
        &mut self,
        id: &str,
        request: &Request,
        query: Option<&Query>,
        now: Time,
    ) -> Result<CommandAnswer, Problem> {
        let acted = CommandAnswer {
            head: self.act(id, request, now)?,
            revision: self.revision,
            view: None,
            problem: None,
        };
        let Some(query) = query else {
            return Ok(acted);
        };
        Ok(match self.snapshot(id, now) {
            Ok(snapshot) => snapshot.acted(query),
            Err(problem) => CommandAnswer {
                problem: Some(problem),
                ..acted
            },
        })
    }
}
