//! Journeys through the real window, from a maker's first look to the last wash.

use lapwork_tests::window::Window;

#[test]
fn the_window_opens_on_an_empty_folder() {
    let data = tempfile::tempdir().unwrap();
    let mut window = Window::open(data.path());
    window.wait_until("there is text", |window| !window.text().trim().is_empty());
    window.reopen();
    window.wait_until("there is text", |window| !window.text().trim().is_empty());
}
