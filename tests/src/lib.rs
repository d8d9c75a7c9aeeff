//! Outside checks and journeys in the real window; see the files under `tests/`.
//!
//! [`program`] builds and finds Lapwork itself; [`window`] opens it on a screen that
//! nobody sees and works it as a maker would; [`driver`] speaks to the window's browser;
//! [`desktop`] closes it as a desktop does; [`walk`] is a maker's hand in it; [`access`] is how others than the quick-eyed meet it.
//! [`processes`] are those that run; [`forgetful`] is a disk that fails, [`tapped`] one that is disturbed; [`served`] is the
//! service without a window, [`maker`] works with it; [`asked`] is one of all that the window
//! sends; [`page`] is the app in a browser; [`started`] are programs that
//! tests start.

pub mod access;
pub mod asked;
pub mod desktop;
pub mod driver;
pub mod forgetful;
pub mod maker;
pub mod page;
pub mod processes;
pub mod program;
pub mod served;
pub mod started;
pub mod tapped;
pub mod walk;
pub mod window;
