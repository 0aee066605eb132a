//! The page from static files, with the library as a WebAssembly module in place of the server.

use std::io::{BufRead as _, BufReader, Write as _};
use std::net::TcpListener;
use std::path::PathBuf;

/// The folder that `examples/web/build` made; none where it was not, which is said.
pub fn folder() -> Option<PathBuf> {
    let folder = std::env::var_os("BLOCKWRIGHT_WEB").map(PathBuf::from);
    if folder.is_none() {
        eprintln!(
            "SKIPPED: BLOCKWRIGHT_WEB names no folder, the page was not used from static files"
        );
    }
    folder
}

/// A web host as plain as one can be: it gives the files of a folder. Its address.
pub fn host(folder: PathBuf) -> String {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("http://{}/", listener.local_addr().unwrap());
    std::thread::spawn(move || {
        for stream in listener.incoming() {
            let mut stream = stream.unwrap();
            let folder = folder.clone();
            std::thread::spawn(move || {
                let mut line = String::new();
                let mut reader = BufReader::new(stream.try_clone().unwrap());
                reader.read_line(&mut line).unwrap();
                let mut header = String::new();
                while reader.read_line(&mut header).unwrap_or(0) > 2 {
                    header.clear();
                }
                let path = line
                    .split(' ')
                    .nth(1)
                    .unwrap_or("/")
                    .trim_start_matches('/');
                let path = if path.is_empty() { "index.html" } else { path };
                let kind = match path.rsplit('.').next() {
                    Some("html") => "text/html",
                    Some("css") => "text/css",
                    Some("js") => "text/javascript",
                    Some("svg") => "image/svg+xml",
                    Some("wasm") => "application/wasm",
                    _ => "application/octet-stream",
                };
                let found = std::fs::read(folder.join(path));
                let (status, bytes) =
                    found.map_or(("404 Not Found", Vec::new()), |bytes| ("200 OK", bytes));
                let head = format!(
                    "HTTP/1.1 {status}\r\ncontent-type: {kind}\r\ncontent-length: {}\r\nconnection: close\r\n\r\n",
                    bytes.len()
                );
                let _ = stream.write_all(head.as_bytes());
                let _ = stream.write_all(&bytes);
            });
        }
    });
    address
}
