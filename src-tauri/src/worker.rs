//! A worker: a thread that owns a state and runs jobs on it in the order they were sent.
//!
//! The window's thread only puts a job into the queue and continues at once; the worker's thread
//! runs one job after another and calls back with the answer. No other thread has the worker's
//! state, so no lock is needed.
//!
//! Promises: jobs run in the order of the calls of [`Worker::send`]. Every job is answered once,
//! even if it panics: the panic is caught, the state [`recover`](Recover::recover)s, the problem
//! that it returns becomes the answer, and the worker continues. [`Worker::finish`] returns once
//! every job sent before it is done; jobs sent after it are dropped without an answer, since the
//! window is gone by then.

use crate::system_words;
use lapwork_core::words::Problem;
use std::io;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Sender, channel};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread::{Builder, JoinHandle};

/// What a worker owns.
pub trait Recover: 'static {
    /// Put right what work that panicked may have left half done; returns the message.
    fn recover(&mut self) -> Problem;
}

type Job<S> = Box<dyn FnOnce(&mut S) + Send>;

/// The queue of a thread that owns an `S`.
#[derive(Debug)]
pub struct Worker<S> {
    jobs: Mutex<Option<Sender<Job<S>>>>,
    thread: Mutex<Option<JoinHandle<()>>>,
}

impl<S: Recover> Worker<S> {
    /// Start the thread; what it owns is made there.
    ///
    /// # Errors
    /// What the system said where it starts no thread.
    pub fn start(name: &str, make: impl FnOnce() -> S + Send + 'static) -> io::Result<Worker<S>> {
        let (jobs, queue) = channel::<Job<S>>();
        let thread = Builder::new().name(name.to_string()).spawn(move || {
            let mut state = make();
            for job in queue {
                job(&mut state);
            }
        })?;
        Ok(Worker {
            jobs: Mutex::new(Some(jobs)),
            thread: Mutex::new(Some(thread)),
        })
    }

    /// Queue a piece of work, and return at once. `answer` is called on the worker's thread
    /// with what came of it; it should do no more than pass that on.
    pub fn send<T>(
        &self,
        work: impl FnOnce(&mut S) -> Result<T, Problem> + Send + 'static,
        answer: impl FnOnce(Result<T, Problem>) + Send + 'static,
    ) {
        let job = move |state: &mut S| {
            let done = catch_unwind(AssertUnwindSafe(|| work(state)));
            let done = done.unwrap_or_else(|_| {
                let recovered = catch_unwind(AssertUnwindSafe(|| state.recover()));
                Err(recovered.unwrap_or_else(|_| gone()))
            });
            // An answer that cannot be passed on must not end the worker either.
            let _ = catch_unwind(AssertUnwindSafe(|| answer(done)));
        };
        if let Some(jobs) = &*locked(&self.jobs) {
            // The thread ends only once the sender is gone, which is still here.
            let _ = jobs.send(Box::new(job));
        }
    }

    /// Have a piece of work done, and wait for it. Not for the window's thread.
    ///
    /// # Errors
    /// The [`Problem`] of the work, or that it broke off.
    pub fn ask<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut S) -> Result<T, Problem> + Send + 'static,
    ) -> Result<T, Problem> {
        let (sender, receiver) = channel();
        self.send(work, move |done| {
            let _ = sender.send(done);
        });
        receiver.recv().unwrap_or_else(|_| Err(gone()))
    }

    /// Take no more work, and wait until all that was sent is done.
    pub fn finish(&self) {
        drop(locked(&self.jobs).take());
        if let Some(thread) = locked(&self.thread).take() {
            // A thread that panicked has reported it.
            let _ = thread.join();
        }
    }
}

fn locked<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// That something broke off, where there is nobody left to say it in the language chosen.
pub fn gone() -> Problem {
    system_words().problem("broke", &[])
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::Arc;

    /// Numbers written down, and how often they were put right.
    #[derive(Debug, Default)]
    struct Log {
        numbers: Vec<u32>,
        recovered: u32,
    }

    impl Recover for Log {
        fn recover(&mut self) -> Problem {
            self.recovered += 1;
            Problem {
                code: "log".into(),
                ..gone()
            }
        }
    }

    fn worker() -> Worker<Log> {
        Worker::start("log", Log::default).unwrap()
    }

    #[test]
    fn work_is_done_in_the_order_it_was_sent_and_each_piece_is_answered_once() {
        let worker = worker();
        let (sender, receiver) = channel();
        for n in 0..1000 {
            let sender = sender.clone();
            worker.send(
                move |log| {
                    log.numbers.push(n);
                    // Work that takes long lets nothing overtake it.
                    if n % 100 == 0 {
                        std::thread::sleep(std::time::Duration::from_millis(2));
                    }
                    Ok(n)
                },
                move |done| sender.send(done.unwrap()).unwrap(),
            );
        }
        drop(sender);
        let answered: Vec<u32> = receiver.iter().collect();
        let order: Vec<u32> = (0..1000).collect();
        assert_eq!(answered, order);
        assert_eq!(worker.ask(|log| Ok(log.numbers.clone())).unwrap(), order);
    }

    #[test]
    fn a_panic_is_told_what_it_left_is_put_right_and_the_next_is_done() {
        let worker = worker();
        let broke: Result<(), Problem> = worker.ask(|log| {
            log.numbers.push(1);
            panic!("on purpose")
        });
        assert_eq!(broke.unwrap_err().code, "log");
        let answer = worker.ask(|log| Ok((log.numbers.clone(), log.recovered)));
        assert_eq!(answer.unwrap(), (vec![1], 1));
        // Nor does it end where the answer cannot be passed on.
        worker.send(|_| Ok(()), |_| panic!("on purpose"));
        assert_eq!(worker.ask(|log| Ok(log.recovered)).unwrap(), 1);
    }

    #[test]
    fn to_finish_is_to_do_all_that_was_sent_and_nothing_after() {
        let worker = Arc::new(worker());
        let done = Arc::new(Mutex::new(0));
        for _ in 0..50 {
            let done = Arc::clone(&done);
            let work = move |_: &mut Log| {
                std::thread::sleep(std::time::Duration::from_millis(1));
                *locked(&done) += 1;
                Ok(())
            };
            worker.send(work, |_| {});
        }
        worker.finish();
        assert_eq!(*locked(&done), 50);
        let late: Result<(), Problem> = worker.ask(|_| Ok(()));
        assert_eq!(late.unwrap_err().code, "broke");
        worker.finish();
    }
}
