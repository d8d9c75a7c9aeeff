//! This module arranges fabrics and denims so that they look random but are evenly spread, on
//! both faces at once.
//!
//! An [`Arranger`] looks for a good [`Layout`]: which squares carry which fabric on
//! which face, and where pieces that are made already lie and which way up. It works
//! in rounds, can be stopped after any of them, and its best so far only gets better.
//!
//! # What may change
//!
//! A square's denim, and any fabric glued to it, go with it. Pairs and fours that are
//! sewn go as one; a stitched four may be turned by quarters, any other joined piece
//! by halves, a loose square by quarters; nothing is ever turned over. Joined blocks,
//! pinned places and blocks with a lap of their own stay where they are. Where the
//! maker does not want made pieces moved ([`Wishes::move_made`]), they stay too, and
//! only fabric not yet glued is spread anew.
//!
//! Where the maker wants the denims chosen ([`DenimWish`]), a square that is not cut yet may
//! be of another denim, unless it is pinned or its denim was chosen by hand; squares that are
//! cut keep their denim and, unless made pieces may be moved, their places. How many squares
//! are of which denim follows from what the pile gives ([`DenimSupply`]).
//!
//! [`DenimWish`]: crate::throw::wishes::DenimWish
//!
//! # What is good
//!
//! The cost is a sum of whole numbers; a lower cost is better ([`Score::cost`]):
//!
//! * **Like neighbours**: for each two squares of one print that touch on a face,
//!   along an edge or at a corner, as the wish has it ([`Apart`]).
//! * **Evenness**: the wrap-around L2 discrepancy (F. J. Hickernell, "Lattice rules:
//!   how well do they measure up?", 1998) of the middles of the covered squares, for
//!   each face and for each print on it. With n of N squares covered and
//!   `K(p, q) = Π (3/2 − |x|(1 − |x|))` over both directions, x the distance as a
//!   part of the grid's side, `S = Σ K(p, q)` over all ordered pairs and
//!   `WD² = S/n² − (4/3)²`. The score is stated relative to a random choice:
//!   `(S − floor) / (chance − floor)`, where `chance = n·K₀ + n(n−1)·(R − K₀)/(N−1)`
//!   is its mean over all ways to choose n of the N squares, `floor = n²·R/N` what no
//!   choice can go under, and R the sum of K from one square to all. All of it is in
//!   whole numbers, K being taken times `4·across²·down²`.
//! * **Thickness**: the square of the fabrics that meet at each crossing, both faces
//!   together, so that thick crossings are few and apart; where the maker says how many may meet
//!   at most, a constant for each beyond that.
//! * **Denims**, where wished for: a constant for each face and each two squares side by side
//!   that both show the same denim on it; or, where those of one denim are to lie together,
//!   for each two side by side that are of different denims.
//! * **Grain** and **pattern**, where wished for ([`Grain`], [`Pattern`]).
//!
//! # How it is looked for
//!
//! From a farthest-point fill ([`crate::faces::spread::spread`]), in two ways, of which each round
//! takes those that apply, from the best so far:
//!
//! * Where squares can move, or a mirror image is wished for, by threshold accepting (G. Dueck and
//!   T. Scheuer, 1990): a random exchange of squares, pieces or fabrics is taken if it makes the
//!   cost no worse than by a threshold that falls to zero during the round. Small grids begin from
//!   a higher threshold.
//! * Fabrics alone, unless a mirror image is wished for, by simulated annealing (S. Kirkpatrick,
//!   C. D. Gelatt and M. P. Vecchi, 1983). How many squares of each print lie on each face stays,
//!   so that the cost is a sum over pairs of squares, and what a fabric would cost at each place
//!   can be kept up to date (`fabrics`). Rounds on small grids begin hot, by turns hot enough to get
//!   past fabrics beside their like; later rounds on larger grids keep some of the best so far.
//!
//! The first rounds are short, so that there is an answer soon.
//!
//! # Promises
//!
//! * Whole numbers and ChaCha8 throughout: the same ground, wishes, seed and number
//!   of rounds give the same layout on every machine.
//! * No print is used beyond its stock; as many squares are covered on each face as
//!   wished for, where stock and room allow, and never fewer than are glued.
//! * Sewn pieces keep every square and its faces, and are never turned over.
//!
//! ```
//! use lapwork_core::demo;
//! use lapwork_core::faces::arrange::Arranger;
//! use lapwork_core::measure::Count;
//! use lapwork_core::plan::Plan;
//! use lapwork_core::throw::wishes::Wishes;
//! use lapwork_core::throw::{Event, Throw};
//!
//! let throw = Throw::begin(&Event::Begun {
//!     name: "Two faces".into(),
//!     plan: Plan::default(),
//!     prints: demo::prints(),
//!     denims: vec![],
//!     after: None,
//! })
//! .unwrap();
//! let wishes = Wishes { front: Count::from(16), back: Count::from(12), ..Wishes::default() };
//! let mut arranger = Arranger::new(&throw, wishes, 7);
//! let first = arranger.cost();
//! while !arranger.settled() {
//!     arranger.round();
//! }
//! assert!(arranger.cost() <= first);
//! // The same seed leads to the same layout.
//! let mut again = Arranger::new(&throw, wishes, 7);
//! while !again.settled() {
//!     again.round();
//! }
//! assert_eq!(again.covers(), arranger.covers());
//! ```

mod board;
mod denims;
mod evenness;
mod fabrics;
mod replace;
mod search;
mod start;
mod supply;
#[cfg(test)]
mod tests;
mod weights;
mod wishes;

pub use denims::dealt;
pub use replace::{OtherDenim, in_another_denim};
pub use search::Arranger;
pub use supply::DenimSupply;
pub use wishes::{FromPile, Score, Shades, free, of};
