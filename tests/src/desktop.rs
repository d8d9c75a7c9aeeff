//! What a desktop does to a window that a driver cannot: ask it to close.
//!
//! On the screen of the tests there is no window manager, so this speaks the little of the X
//! protocol that is needed: every window of the screen is sent `WM_DELETE_WINDOW` (ICCCM 4.2.8.1).

use std::io::{Read as _, Write as _};
use std::os::unix::net::UnixStream;

struct Screen {
    stream: UnixStream,
    root: u32,
}

fn u32_at(bytes: &[u8], at: usize) -> u32 {
    u32::from_le_bytes([bytes[at], bytes[at + 1], bytes[at + 2], bytes[at + 3]])
}

fn u16_at(bytes: &[u8], at: usize) -> usize {
    u16::from_le_bytes([bytes[at], bytes[at + 1]]).into()
}

impl Screen {
    fn open(display: &str) -> Screen {
        let number = display.trim_start_matches(':');
        let stream = UnixStream::connect(format!("/tmp/.X11-unix/X{number}"));
        let mut screen = Screen {
            stream: stream.expect("the screen is there"),
            root: 0,
        };
        // Little-endian, protocol 11.0, no authorisation.
        screen.send(&[b'l', 0, 11, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
        let head = screen.read(8);
        assert_eq!(head[0], 1, "the screen lets us in");
        let output = screen.read(4 * u16_at(&head, 6));
        let vendor = u16_at(&output, 16).next_multiple_of(4);
        screen.root = u32_at(&output, 32 + vendor + 8 * usize::from(output[21]));
        screen
    }

    fn send(&mut self, bytes: &[u8]) {
        self.stream.write_all(bytes).expect("the screen listens");
    }

    fn read(&mut self, count: usize) -> Vec<u8> {
        let mut bytes = vec![0; count];
        self.stream.read_exact(&mut bytes).expect("an answer");
        bytes
    }

    /// A request of whole words after its first two bytes, and its reply.
    fn ask(&mut self, request: &[u8]) -> (Vec<u8>, Vec<u8>) {
        self.send(request);
        loop {
            let head = self.read(32);
            // Not an error, nor an event.
            if head[0] == 1 {
                let rest = self.read(4 * u32_at(&head, 4) as usize);
                return (head, rest);
            }
        }
    }

    fn atom(&mut self, name: &str) -> u32 {
        let words = (8 + name.len()).div_ceil(4);
        let mut request = vec![16, 0, words as u8, 0, name.len() as u8, 0, 0, 0];
        request.extend(name.as_bytes());
        request.resize(words * 4, 0);
        u32_at(&self.ask(&request).0, 8)
    }

    fn windows(&mut self) -> Vec<u32> {
        let mut request = vec![15, 0, 2, 0];
        request.extend(self.root.to_le_bytes());
        let (_, children) = self.ask(&request);
        children.chunks_exact(4).map(|c| u32_at(c, 0)).collect()
    }
}

/// Ask every window on a screen, such as `:7`, to close.
pub fn close_windows(display: &str) {
    let mut screen = Screen::open(display);
    let (protocols, delete) = (screen.atom("WM_PROTOCOLS"), screen.atom("WM_DELETE_WINDOW"));
    for window in screen.windows() {
        let mut request = vec![25, 0, 11, 0];
        request.extend(window.to_le_bytes());
        request.extend(0u32.to_le_bytes());
        // A client message of five words: the protocol, and no time in particular.
        request.extend([33, 32, 0, 0]);
        for word in [window, protocols, delete, 0, 0, 0, 0] {
            request.extend(word.to_le_bytes());
        }
        screen.send(&request);
    }
    // Whatever was sent has arrived once the next request is answered.
    screen.ask(&[43, 0, 1, 0]);
}
