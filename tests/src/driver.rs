//! The WebDriver protocol, as much of it as the journeys need (W3C WebDriver, level 2).
//!
//! Every call waits for its answer and panics with the driver's own words if it fails:
//! in a test that is what is wanted. Screenshots are left out on purpose, since the
//! driver of this browser never answers that call.

use serde_json::{Value, json};
use std::time::Duration;

/// The name of an element reference in the protocol.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// A session with a window's browser.
pub struct Driver {
    agent: ureq::Agent,
    session: String,
}

/// An element of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Element(String);

impl Element {
    /// The element an answer of the driver stands for, if it is one.
    pub fn of(answer: &Value) -> Option<Element> {
        let id = answer.get(ELEMENT)?.as_str()?;
        Some(Element(id.to_string()))
    }

    /// The element as an argument for a script.
    pub fn argument(&self) -> Value {
        json!({ ELEMENT: self.0 })
    }
}

impl Driver {
    /// Have the driver that listens on `port` open `program`.
    ///
    /// # Errors
    /// What the driver said.
    pub fn open(port: u16, program: &str) -> Result<Driver, String> {
        Driver::with(
            port,
            &json!({
                "browserName": "wry",
                "tauri:options": {"application": program},
            }),
        )
    }

    /// Have the driver that listens on `port` open what is wished for.
    ///
    /// # Errors
    /// What the driver said.
    pub fn with(port: u16, wish: &Value) -> Result<Driver, String> {
        let config = ureq::Agent::config_builder()
            .timeout_global(Some(Duration::from_secs(60)))
            .http_status_as_error(false)
            .build();
        let agent = config.new_agent();
        let wish = json!({"capabilities": {"alwaysMatch": wish}});
        let base = format!("http://127.0.0.1:{port}/session");
        let answer = output(agent.post(&base).send_json(wish))?;
        let id = answer["sessionId"]
            .as_str()
            .ok_or("the driver gave no session")?;
        Ok(Driver {
            session: format!("{base}/{id}"),
            agent,
        })
    }

    /// Ask the driver for something it alone has.
    ///
    /// # Errors
    /// What the driver said.
    pub fn post(&self, path: &str, body: Value) -> Result<Value, String> {
        output(self.agent.post(self.url(path)).send_json(body))
    }

    fn url(&self, path: &str) -> String {
        format!("{}{path}", self.session)
    }

    /// End the session, which closes the window.
    ///
    /// # Errors
    /// What the driver said.
    pub fn close(&self) -> Result<(), String> {
        output(self.agent.delete(&self.session).call()).map(|_| ())
    }

    /// The handle of the tab that is driven.
    ///
    /// # Panics
    /// If there is none.
    pub fn handle(&self) -> Value {
        let handle = output(self.agent.get(self.url("/window")).call());
        handle.unwrap_or_else(|why| panic!("no tab: {why}"))
    }

    /// Close the tab that is driven.
    ///
    /// # Errors
    /// What the driver said.
    pub fn close_tab(&self) -> Result<(), String> {
        let url = self.url("/window");
        output(self.agent.delete(url).call()).map(|_| ())
    }

    /// Run a script's body in the page, with `arguments`, and give what it returns.
    ///
    /// # Errors
    /// What the driver said.
    pub fn run(&self, script: &str, arguments: &[Value]) -> Result<Value, String> {
        self.post(
            "/execute/sync",
            json!({"script": script, "args": arguments}),
        )
    }

    /// Run a script's body in the page, and give what it hands to its last argument.
    ///
    /// # Errors
    /// What the driver said.
    pub fn run_and_wait(&self, script: &str, arguments: &[Value]) -> Result<Value, String> {
        self.post(
            "/execute/async",
            json!({"script": script, "args": arguments}),
        )
    }

    /// Click in the middle of an element, as a finger would.
    ///
    /// # Errors
    /// What the driver said, such as that something else lies over it.
    pub fn click(&self, element: &Element) -> Result<(), String> {
        let path = format!("/element/{}/click", element.0);
        self.post(&path, json!({})).map(|_| ())
    }

    /// Type into an element.
    ///
    /// # Errors
    /// What the driver said.
    pub fn keys(&self, element: &Element, text: &str) -> Result<(), String> {
        let path = format!("/element/{}/value", element.0);
        self.post(&path, json!({"text": text})).map(|_| ())
    }

    /// Empty a field.
    ///
    /// # Errors
    /// What the driver said.
    pub fn clear(&self, element: &Element) -> Result<(), String> {
        let path = format!("/element/{}/clear", element.0);
        self.post(&path, json!({})).map(|_| ())
    }

    /// Press pointer or keys: the protocol's list of actions.
    ///
    /// # Errors
    /// What the driver said.
    pub fn actions(&self, actions: Value) -> Result<(), String> {
        self.post("/actions", json!({"actions": actions}))
            .map(|_| ())
    }

    /// Press on the middle of an element with a `mouse` or by `touch`, and let go after so many
    /// milliseconds. (A click lets go in the moment in which it presses.)
    ///
    /// # Errors
    /// What the driver said.
    pub fn press(&self, element: &Element, pointer: &str, ms: u32) -> Result<(), String> {
        self.actions(json!([{
            "type": "pointer", "id": pointer, "parameters": {"pointerType": pointer},
            "actions": [
                {"type": "pointerMove", "duration": 0, "origin": element.argument(), "x": 0, "y": 0},
                {"type": "pointerDown", "button": 0},
                {"type": "pause", "duration": ms},
                {"type": "pointerUp", "button": 0},
            ],
        }]))
    }

    /// Put the window's upper left corner somewhere on the screen.
    ///
    /// # Errors
    /// What the driver said.
    pub fn place(&self, x: u32, y: u32) -> Result<(), String> {
        self.post("/window/rect", json!({"x": x, "y": y}))
            .map(|_| ())
    }

    /// Give the window a size.
    ///
    /// # Errors
    /// What the driver said.
    pub fn size(&self, width: u32, height: u32) -> Result<(), String> {
        let rect = json!({"width": width, "height": height});
        self.post("/window/rect", rect).map(|_| ())
    }
}

/// The value of an answer, or the error in it.
fn output(answer: Result<ureq::http::Response<ureq::Body>, ureq::Error>) -> Result<Value, String> {
    let mut answer = answer.map_err(|why| format!("the driver did not answer: {why}"))?;
    let fine = answer.status().is_success();
    let body: Value = answer
        .body_mut()
        .read_json()
        .map_err(|why| format!("the driver's answer makes no sense: {why}"))?;
    let value = body["value"].clone();
    if fine {
        return Ok(value);
    }
    let error = value["error"].as_str().unwrap_or("error");
    let message = value["message"].as_str().unwrap_or_default();
    Err(format!("{error}: {message}"))
}
