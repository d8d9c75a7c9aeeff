//! try
use lapwork_tests::window::Window;
use std::path::Path;
#[test]
fn try_sizes() {
    let data = tempfile::tempdir().unwrap();
    let window = Window::open(data.path());
    for (w, h) in [(320, 480), (390, 844), (1200, 800), (844, 480)] {
        let r = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| window.size(w, h)));
        println!("{w} {h} {:?} {}", r.is_ok(), window.run("return [innerWidth, innerHeight, outerWidth, outerHeight, screenX, screenY, devicePixelRatio]", &[]));
        window.picture(Path::new(&format!("/tmp/pic-{w}.png")));
    }
    println!("{}", window.listing());
    println!("{}", window.run("return JSON.stringify(Object.keys(window.__TAURI_INTERNALS__ || {}))", &[]));
    window.run("window.got=null; window.__TAURI_INTERNALS__.invoke('tend',{tend:{tend:'demo'}}).then(x=>window.got=x,e=>window.got={e})", &[]);
    window.wait_until("got", |w| !w.run("return window.got", &[]).is_null());
    println!("{}", window.run("return JSON.stringify(window.got).slice(0,600)", &[]));
    window.run("window.got=null; window.__TAURI_INTERNALS__.invoke('plugin:window|set_title',{value:'x'}).then(x=>window.got=x,e=>window.got={e})", &[]);
    window.wait_until("got", |w| !w.run("return window.got", &[]).is_null());
    println!("{}", window.run("return JSON.stringify(window.got).slice(0,600)", &[]));
    window.run("location.href='http://example.com/'", &[]);
    std::thread::sleep(std::time::Duration::from_secs(1));
    println!("{}", window.run("return location.href", &[]));
}
