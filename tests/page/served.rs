//! The command that serves the page, and plain requests to it.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::{Shutdown, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::Value;

pub struct Served {
    pub child: Child,
    pub port: u16,
    pub token: String,
}

pub struct Reply {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Served {
    pub fn start(folder: Option<&Path>) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_blockwright"));
        command.args(["page", "--no-open"]).stdout(Stdio::piped());
        if let Some(folder) = folder {
            command.arg(folder);
        }
        let mut child = command.spawn().unwrap();
        let mut line = String::new();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        out.read_line(&mut line).unwrap();
        let (address, token) = line.trim().split_once("/#").unwrap();
        let port = address.rsplit(':').next().unwrap().parse().unwrap();
        assert!(address.starts_with("http://127.0.0.1:"), "{line}");
        Self {
            child,
            port,
            token: token.to_owned(),
        }
    }

    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/#{}", self.port, self.token)
    }

    /// Sends bytes as they are; the reply.
    pub fn raw(&self, request: &[u8]) -> Reply {
        self.sent(request, false)
    }

    /// Sends bytes and says that no more will come.
    pub fn garbage(&self, bytes: &[u8]) -> Reply {
        self.sent(bytes, true)
    }

    fn sent(&self, request: &[u8], no_more: bool) -> Reply {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream
            .set_read_timeout(Some(Duration::from_secs(20)))
            .unwrap();
        // A server that has seen enough may close before all is sent.
        let _ = stream.write_all(request);
        if no_more {
            let _ = stream.shutdown(Shutdown::Write);
        }
        let mut bytes = Vec::new();
        let _ = stream.read_to_end(&mut bytes);
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
        let status = head.split(' ').nth(1).and_then(|code| code.parse().ok());
        Reply {
            status: status.unwrap_or(0),
            head: head.to_lowercase(),
            body: body.to_owned(),
        }
    }

    /// A request with headers of one's own, `None` for those of an honest page.
    pub fn request(&self, line: &str, headers: &[(&str, Option<&str>)], body: &str) -> Reply {
        let host = format!("127.0.0.1:{}", self.port);
        let mut all = vec![
            ("host", host.as_str()),
            ("content-type", "application/json"),
            ("x-blockwright-token", self.token.as_str()),
        ];
        for (name, value) in headers {
            all.retain(|(known, _)| known != name);
            all.extend(value.map(|value| (*name, value)));
        }
        let mut text = format!(
            "{line} HTTP/1.1\r\nconnection: close\r\ncontent-length: {}\r\n",
            body.len()
        );
        for (name, value) in all {
            text.push_str(&format!("{name}: {value}\r\n"));
        }
        self.raw(format!("{text}\r\n{body}").as_bytes())
    }

    /// A message from an honest page.
    pub fn ask(&self, message: &Value) -> Value {
        let reply = self.request("POST /message", &[], &message.to_string());
        assert_eq!(reply.status, 200, "{}", reply.body);
        serde_json::from_str(&reply.body).unwrap()
    }

    /// Interrupts it as Ctrl-C does; how it ended, and how long it took.
    #[cfg(unix)]
    pub fn interrupt(&mut self) -> (Option<i32>, Duration) {
        let began = Instant::now();
        let done = Command::new("kill")
            .args(["-INT", &self.child.id().to_string()])
            .status();
        assert!(done.unwrap().success());
        let ended = self.child.wait().unwrap();
        (ended.code(), began.elapsed())
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
