//! WebDriver (W3C Recommendation), as much of it as the session needs: JSON over plain HTTP to a driver
//! on this machine. A library for it would bring some sixty crates, and take longer to compile than all
//! that is asked here.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::time::Duration;

use serde_json::{Value, json};

/// The key under which an element is named (section 12.1 of the Recommendation).
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// A session with a driver.
pub struct Driver {
    port: u16,
    session: String,
}

impl Driver {
    /// A new session with a browser of these capabilities.
    pub fn connect(port: u16, capabilities: &Value) -> Result<Self, String> {
        let mut driver = Self {
            port,
            session: String::new(),
        };
        let wanted = json!({"capabilities": {"alwaysMatch": capabilities}});
        let made = driver.send("POST", "/session", &wanted)?;
        let id = made["sessionId"].as_str().ok_or("no session")?;
        driver.session = format!("/session/{id}");
        Ok(driver)
    }

    /// A command of the session.
    pub fn post(&self, command: &str, body: &Value) -> Result<Value, String> {
        self.send("POST", &format!("{}{command}", self.session), body)
    }

    /// The path of the first element that CSS finds.
    pub fn find(&self, css: &str) -> Result<String, String> {
        let wanted = json!({"using": "css selector", "value": css});
        let found = self.post("/element", &wanted)?;
        let id = found[ELEMENT].as_str().ok_or("no element")?;
        Ok(format!("/element/{id}"))
    }

    /// Ends the browser. What a page with changes would ask before it goes would keep it from that.
    pub fn end(&self) {
        let script = "addEventListener('beforeunload', (e) => e.stopImmediatePropagation(), true)";
        let handles = self.send(
            "GET",
            &format!("{}/window/handles", self.session),
            &Value::Null,
        );
        for handle in handles.iter().flat_map(|h| h.as_array()).flatten() {
            let _ = self.post("/window", &json!({"handle": handle}));
            let _ = self.post("/execute/sync", &json!({"script": script, "args": []}));
        }
        let _ = self.send("DELETE", &self.session, &Value::Null);
    }

    fn send(&self, method: &str, path: &str, body: &Value) -> Result<Value, String> {
        let text = |error: std::io::Error| error.to_string();
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).map_err(text)?;
        stream
            .set_read_timeout(Some(Duration::from_secs(60)))
            .map_err(text)?;
        let body = if body.is_null() {
            String::new()
        } else {
            body.to_string()
        };
        let head = format!(
            "{method} {path} HTTP/1.1\r\nhost: 127.0.0.1:{}\r\nconnection: close\r\n\
             content-type: application/json\r\ncontent-length: {}\r\n\r\n",
            self.port,
            body.len()
        );
        stream
            .write_all(format!("{head}{body}").as_bytes())
            .map_err(text)?;
        // As many bytes as the answer says: a browser that has just been started keeps the connection
        // open that it was asked for by.
        let mut reader = BufReader::new(stream);
        let (mut head, mut length) = (String::new(), 0);
        loop {
            let mut line = String::new();
            reader.read_line(&mut line).map_err(text)?;
            if line.trim().is_empty() {
                break;
            }
            if let Some((name, value)) = line.split_once(':')
                && name.eq_ignore_ascii_case("content-length")
            {
                length = value.trim().parse().unwrap_or(0);
            }
            head.push_str(&line);
        }
        let mut body = vec![0; length];
        reader.read_exact(&mut body).map_err(text)?;
        let body = String::from_utf8_lossy(&body);
        let answer: Value = serde_json::from_str(&body).map_err(|error| error.to_string())?;
        let status = head.split(' ').nth(1).unwrap_or_default();
        match status {
            "200" => Ok(answer["value"].clone()),
            _ => Err(answer["value"]["message"].to_string()),
        }
    }
}
