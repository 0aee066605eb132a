//! The server under requests that no honest page sends. What well-kept local servers refuse is
//! gathered from published advice: hosts and origins by allow-list against rebinding (NCC Group,
//! "Preventing DNS Rebinding Attacks"), `Sec-Fetch-Site` as Go's `net/http` judges it, tokens in headers
//! since cookies are shared between ports (RFC 6265, section 8.5).

use std::fs;
use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use serde_json::json;

use crate::served::Served;
use crate::support::command::Place;

const HERE: &str = r#"{"ask": "here", "page": "one"}"#;

#[test]
fn nobody_else_can_ask() {
    let began = Instant::now();
    let served = Served::start(None);
    let first = served.request("GET /", &[], "");
    assert_eq!(first.status, 200);
    assert!(
        began.elapsed() < Duration::from_secs(1),
        "first page after {:?}",
        began.elapsed()
    );
    let ask =
        |headers: &[(&str, Option<&str>)]| served.request("POST /message", headers, HERE).status;
    assert_eq!(ask(&[]), 200);
    let port = served.port;
    let ours = format!("http://127.0.0.1:{port}");
    let local = format!("localhost:{port}");
    assert_eq!(
        ask(&[
            ("origin", Some(&ours)),
            ("sec-fetch-site", Some("same-origin"))
        ]),
        200
    );
    assert_eq!(ask(&[("host", Some(&local))]), 200);
    // The token: missing, another, half of it, in the address, in a cookie.
    assert_eq!(ask(&[("x-blockwright-token", None)]), 401);
    assert_eq!(
        ask(&[(
            "x-blockwright-token",
            Some("0123456789abcdef0123456789abcdef")
        )]),
        401
    );
    assert_eq!(
        ask(&[("x-blockwright-token", Some(&served.token[..16]))]),
        401
    );
    let without = [("x-blockwright-token", None), ("cookie", Some("token=x"))];
    let line = format!("POST /message?token={}", served.token);
    assert_eq!(served.request(&line, &without, HERE).status, 401);
    // A name that leads here, as rebinding has it.
    for host in [
        "evil.example",
        &format!("evil.example:{port}"),
        &format!("127.0.0.1.evil.example:{port}"),
        "127.0.0.1",
        &format!("127.0.0.1:{}", port ^ 1),
        &format!("localhost:{port}.evil.example"),
    ] {
        assert_eq!(ask(&[("host", Some(host))]), 421, "{host}");
        assert_eq!(
            served.request("GET /", &[("host", Some(host))], "").status,
            421,
            "{host}"
        );
    }
    // Another site, the same site on another port, a sandboxed frame.
    for origin in [
        "http://evil.example",
        "null",
        &format!("http://localhost:{}", port ^ 1),
        &format!("https://127.0.0.1:{port}"),
    ] {
        assert_eq!(ask(&[("origin", Some(origin))]), 403, "{origin}");
    }
    for site in ["cross-site", "same-site", "none"] {
        assert_eq!(ask(&[("sec-fetch-site", Some(site))]), 403, "{site}");
    }
    // What a form of another page could send without being asked for leave.
    for kind in [
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data",
    ] {
        assert_eq!(ask(&[("content-type", Some(kind))]), 415, "{kind}");
    }
    // Nothing is changed by asking for a page.
    for line in [
        "GET /message",
        "PUT /message",
        "DELETE /message",
        "OPTIONS /message",
    ] {
        assert_eq!(served.request(line, &[], HERE).status, 405, "{line}");
    }
}

#[test]
fn every_answer_says_what_a_browser_may_do_with_it() {
    let served = Served::start(None);
    let answers = [
        served.request("GET /", &[], ""),
        served.request("GET /main.js", &[], ""),
        served.request("GET /nothing", &[], ""),
        served.request("POST /message", &[], HERE),
        served.request("POST /message", &[("x-blockwright-token", None)], HERE),
    ];
    for reply in answers {
        for wanted in [
            "content-security-policy: default-src 'none'; script-src 'self'; style-src 'self'",
            "frame-ancestors 'none'",
            "x-content-type-options: nosniff",
            "cross-origin-resource-policy: same-origin",
            "cache-control: no-store",
        ] {
            assert!(reply.head.contains(wanted), "{}: {wanted}", reply.head);
        }
        assert!(
            !reply.head.contains("access-control-allow"),
            "{}",
            reply.head
        );
        assert!(!reply.head.contains("set-cookie"), "{}", reply.head);
        assert!(
            !reply.body.contains(&served.token),
            "the token is never sent back"
        );
    }
}

#[test]
fn no_file_is_reached_by_a_path() {
    let place = Place::new();
    place.write("secret.yaml", "name: secret\n");
    let folder = place.path().join("work");
    fs::create_dir(&folder).unwrap();
    let served = Served::start(Some(&folder));
    for path in [
        "/../secret.yaml",
        "/%2e%2e/secret.yaml",
        "/..%2fsecret.yaml",
        "//secret.yaml",
        "/srv/secret.yaml",
        "/etc/passwd",
        "/./main.js/../../secret.yaml",
        "/job.yaml",
        "/main.js%00",
        "/MAIN.JS",
    ] {
        let reply = served.request(&format!("GET {path}"), &[], "");
        assert_eq!(reply.status, 404, "{path}");
        assert!(!reply.body.contains("secret"), "{path}");
    }
    for name in [
        "../secret.yaml",
        "/etc/passwd",
        "sub/job.yaml",
        "other.yaml",
        ".job.yaml",
        "job.yaml\0",
    ] {
        let answer = served.ask(&json!({"ask": "save", "read": null, "files": {name: "x"}}));
        assert_eq!(answer["errors"][0]["code"], "no_such_file", "{name}");
    }
    assert_eq!(fs::read_dir(&folder).unwrap().count(), 0);
    assert_eq!(
        fs::read_to_string(place.path().join("secret.yaml")).unwrap(),
        "name: secret\n"
    );
}

#[test]
fn hostile_bytes_are_refused_and_the_next_page_is_served() {
    let served = Served::start(None);
    let long = format!(r#"{{"ask": "here", "page": "{}"}}"#, "x".repeat(1 << 20));
    assert_eq!(served.request("POST /message", &[], &long).status, 413);
    let fits = format!(
        r#"{{"ask": "here", "page": "{}"}}"#,
        "x".repeat((1 << 20) - 64)
    );
    assert_eq!(served.request("POST /message", &[], &fits).status, 200);
    // A body that says nothing of its length is cut off too.
    let mut chunked = format!(
        "POST /message HTTP/1.1\r\nhost: 127.0.0.1:{}\r\ncontent-type: application/json\r\nx-blockwright-token: {}\r\ntransfer-encoding: chunked\r\nconnection: close\r\n\r\n",
        served.port, served.token
    )
    .into_bytes();
    for _ in 0..20 {
        chunked.extend(b"10000\r\n");
        chunked.extend(vec![b'x'; 0x10000]);
        chunked.extend(b"\r\n");
    }
    chunked.extend(b"0\r\n\r\n");
    assert!([413, 0].contains(&served.raw(&chunked).status));
    for bytes in [
        &b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03"[..],
        b"GET\r\n\r\n",
        b"\r\n\r\n\r\n",
        b"GET / HTTP/9.9\r\n\r\n",
        b"POST /message HTTP/1.1\r\nhost: a\r\nhost: b\r\nconnection: close\r\n\r\n",
    ] {
        assert_ne!(served.garbage(bytes).status, 200);
    }
    let many: String = (0..2000).map(|n| format!("x-{n}: {n}\r\n")).collect();
    assert_ne!(
        served
            .raw(format!("GET / HTTP/1.1\r\n{many}\r\n").as_bytes())
            .status,
        200
    );
    for message in [
        "",
        "{",
        "[]",
        "null",
        r#"{"ask": "nothing"}"#,
        r#"{"ask": "draft", "job": 5}"#,
        r#"{"ask": "most", "job": {}, "step": -1}"#,
        "\"\\ud800\"",
        &"[".repeat(100_000),
    ] {
        let reply = served.request("POST /message", &[], message);
        assert!(
            reply.status == 200 && reply.body.contains("\"status\":\"wrong\""),
            "{message:.40}: {}",
            reply.body
        );
    }
    assert_eq!(
        served.request("POST /message", &[], "\u{feff}{}").status,
        200
    );
    assert_eq!(served.request("GET /", &[], "").status, 200);
}

#[cfg(target_os = "linux")]
#[test]
fn it_listens_on_loopback_alone() {
    let served = Served::start(None);
    let port = format!(":{:04X} ", served.port);
    let listening = |table: &str| -> Vec<String> {
        let text = fs::read_to_string(table).unwrap_or_default();
        // 0A is a socket that listens.
        text.lines()
            .filter_map(|line| {
                let words: Vec<&str> = line.split_whitespace().collect();
                let local = words.get(1)?;
                (words.get(3) == Some(&"0A") && format!("{local} ").contains(&port))
                    .then(|| (*local).to_owned())
            })
            .collect()
    };
    assert_eq!(listening("/proc/net/tcp").len(), 1);
    assert!(listening("/proc/net/tcp")[0].starts_with("0100007F:"));
    assert!(listening("/proc/net/tcp6").is_empty());
}

#[cfg(unix)]
#[test]
fn it_ends_when_it_is_interrupted_and_leaves_no_half_file() {
    let place = Place::new();
    let mut served = Served::start(Some(place.path()));
    // A connection that is kept open, and one whose request never ends.
    let mut idle = TcpStream::connect(("127.0.0.1", served.port)).unwrap();
    idle.write_all(format!("GET / HTTP/1.1\r\nhost: 127.0.0.1:{}\r\n\r\n", served.port).as_bytes())
        .unwrap();
    let mut some = [0; 64];
    let _ = idle.read(&mut some).unwrap();
    let mut half = TcpStream::connect(("127.0.0.1", served.port)).unwrap();
    half.write_all(b"POST /message HTTP/1.1\r\ncontent-le")
        .unwrap();
    // Somebody saves all the while.
    let (port, token) = (served.port, served.token.clone());
    let saving = std::thread::spawn(move || {
        let text = "title: A\n".repeat(5000);
        let body =
            json!({"ask": "save", "read": null, "files": {"job.yaml": text, "wearer.yaml": text}})
                .to_string();
        let head = format!(
            "POST /message HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\ncontent-type: application/json\r\nx-blockwright-token: {token}\r\nconnection: close\r\ncontent-length: {}\r\n\r\n",
            body.len()
        );
        while let Ok(mut stream) = TcpStream::connect(("127.0.0.1", port)) {
            let _ = stream.write_all(format!("{head}{body}").as_bytes());
            let _ = stream.read_to_end(&mut Vec::new());
        }
    });
    std::thread::sleep(Duration::from_millis(150));
    let (code, took) = served.interrupt();
    saving.join().unwrap();
    assert_eq!(code, Some(0));
    assert!(took < Duration::from_secs(3), "{took:?}");
    let mut names: Vec<String> = fs::read_dir(place.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    assert_eq!(names, ["job.yaml", "wearer.yaml"]);
    for name in names {
        assert_eq!(
            fs::read_to_string(place.path().join(name)).unwrap().len(),
            45_000
        );
    }
}

#[test]
fn a_second_page_is_warned_and_nobody_writes_over_another() {
    let place = Place::new();
    let served = Served::start(Some(place.path()));
    let hello = |page: &str| served.ask(&json!({"ask": "hello", "page": page}));
    let save = |read: &serde_json::Value, text: &str| {
        served.ask(&json!({"ask": "save", "read": read, "files": {"job.yaml": text}}))
    };
    let one = hello("one");
    assert_eq!(
        (&one["others"], &one["folder"]),
        (
            &json!(0),
            &json!(place.path().file_name().unwrap().to_str().unwrap())
        )
    );
    let two = hello("two");
    assert_eq!(two["others"], 1, "the second page is warned");
    assert_eq!(
        served.ask(&json!({"ask": "here", "page": "one"}))["others"],
        1,
        "and so is the first"
    );
    let saved = save(&one["digest"], "title: one\n");
    assert_eq!(saved["status"], "ok");
    let refused = save(&two["digest"], "title: two\n");
    assert_eq!(refused["errors"][0]["code"], "changed_elsewhere");
    assert_eq!(
        fs::read_to_string(place.path().join("job.yaml")).unwrap(),
        "title: one\n"
    );
    // The first goes on; what is changed by an editor counts too.
    assert_eq!(save(&saved["digest"], "title: one again\n")["status"], "ok");
    place.write("job.yaml", "title: by hand\n");
    assert_eq!(
        save(&saved["digest"], "title: two\n")["errors"][0]["code"],
        "changed_elsewhere"
    );
    served.ask(&json!({"ask": "bye", "page": "two"}));
    assert_eq!(
        served.ask(&json!({"ask": "here", "page": "one"}))["others"],
        0
    );
}

#[test]
fn a_folder_that_is_none_and_a_port_in_use_are_said() {
    let place = Place::new();
    place.write("file", "");
    for folder in ["missing", "file"] {
        let said = place.run(&["page", folder, "--no-open"]).failed(2);
        assert!(said.contains("folder"), "{said}");
    }
    let served = Served::start(None);
    let said = place
        .run(&["page", "--no-open", "--port", &served.port.to_string()])
        .failed(2);
    assert!(said.contains("leave --port out"), "{said}");
}
