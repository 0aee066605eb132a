//! A real browser, driven over WebDriver.

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use tempfile::TempDir;

use crate::driver::Driver;

/// Chromium and its driver, with a profile and a folder for downloads of their own.
pub struct Browser {
    client: Option<Driver>,
    driver: Child,
    _profile: TempDir,
    downloads: TempDir,
}

/// How long anything on the page may take.
const PATIENCE: Duration = Duration::from_secs(20);

impl Browser {
    /// A browser; none where there is no driver, which is said.
    pub fn start() -> Option<Self> {
        let port = std::net::TcpListener::bind("127.0.0.1:0")
            .unwrap()
            .local_addr()
            .unwrap()
            .port();
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
        let Ok(driver) = driver else {
            eprintln!("SKIPPED: no chromedriver, the page was not used in a browser");
            return None;
        };
        let [profile, downloads] =
            [(); 2].map(|()| tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap());
        let capabilities = json!({
            "browserName": "chrome",
            // A page with changes that are not saved asks before it goes.
            "unhandledPromptBehavior": "accept",
            "goog:chromeOptions": {
                "args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                    "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    "--window-size=1280,900", format!("--user-data-dir={}", profile.path().display())],
                "prefs": {"download.default_directory": downloads.path(), "download.prompt_for_download": false,
                    "profile.default_content_setting_values.automatic_downloads": 1},
            },
        });
        let mut browser = Self {
            client: None,
            driver,
            _profile: profile,
            downloads,
        };
        let began = Instant::now();
        while browser.client.is_none() {
            let connected = Driver::connect(port, &capabilities);
            browser.client = match connected {
                Ok(client) => Some(client),
                Err(error) if began.elapsed() > PATIENCE => {
                    eprintln!(
                        "SKIPPED: no browser that runs, the page was not used in one: {error}"
                    );
                    return None;
                }
                Err(_) => {
                    std::thread::sleep(Duration::from_millis(100));
                    None
                }
            };
        }
        Some(browser)
    }

    fn client(&self) -> &Driver {
        self.client.as_ref().unwrap()
    }

    /// Opens an address and waits for the page to be ready.
    pub fn open(&self, address: &str) {
        self.client()
            .post("/url", &json!({"url": address}))
            .unwrap();
        self.until("document.body.dataset.ready === 'yes'");
    }

    pub fn reload(&self) {
        self.client().post("/refresh", &json!({})).unwrap();
        self.until("document.body.dataset.ready === 'yes'");
    }

    pub fn script(&self, script: &str, args: Vec<Value>) -> Value {
        let body = json!({"script": script, "args": args});
        self.client()
            .post("/execute/sync", &body)
            .unwrap_or_else(|e| panic!("{script}: {e}"))
    }

    /// The value of an expression.
    pub fn value(&self, expression: &str) -> Value {
        self.script(&format!("return {expression}"), Vec::new())
    }

    pub fn text(&self, css: &str) -> String {
        let found = self.script(
            "return document.querySelector(arguments[0])?.textContent ?? ''",
            vec![json!(css)],
        );
        found.as_str().unwrap().to_owned()
    }

    /// Waits until an expression is true.
    pub fn until(&self, expression: &str) {
        let began = Instant::now();
        while self.value(expression) != true {
            let text = || self.value("document.body.innerText.slice(0, 1500)");
            assert!(
                began.elapsed() < PATIENCE,
                "waited for {expression} on\n{}",
                text()
            );
            std::thread::sleep(Duration::from_millis(15));
        }
    }

    /// Finds by CSS and does something with the element, once more if the page has just been renewed.
    fn with(&self, css: &str, command: &str, body: &Value) {
        self.until(&format!("document.querySelector({}) !== null", json!(css)));
        let mut last = String::new();
        for _ in 0..5 {
            let element = self.client().find(css);
            match element
                .and_then(|element| self.client().post(&format!("{element}{command}"), body))
            {
                Ok(_) => return,
                Err(error) => last = error,
            }
            std::thread::sleep(Duration::from_millis(60));
        }
        panic!("{css}: {last}");
    }

    pub fn click(&self, css: &str) {
        self.with(css, "/click", &json!({}));
    }

    pub fn type_in(&self, css: &str, text: &str) {
        self.with(css, "/value", &json!({"text": text}));
    }

    /// Types into a field in place of what stands there.
    pub fn retype(&self, css: &str, text: &str) {
        self.script(
            "document.querySelector(arguments[0]).select()",
            vec![json!(css)],
        );
        self.type_in(css, text);
    }

    pub fn choose(&self, css: &str, value: &str) {
        self.script(
            "const s = document.querySelector(arguments[0]); s.value = arguments[1]; s.dispatchEvent(new Event('change'))",
            vec![json!(css), json!(value)],
        );
    }

    /// Puts a slider somewhere, as a hand does: moved, then let go.
    pub fn slide(&self, css: &str, value: f64) {
        self.script(
            "const s = document.querySelector(arguments[0]); s.value = arguments[1]; \
             s.dispatchEvent(new Event('input')); s.dispatchEvent(new Event('change'))",
            vec![json!(css), json!(value)],
        );
    }

    pub fn size(&self, width: u32, height: u32) {
        let rect = json!({"width": width, "height": height});
        self.client().post("/window/rect", &rect).unwrap();
    }

    /// Opens a second page, and goes on there.
    pub fn second(&self) {
        let window = self
            .client()
            .post("/window/new", &json!({"type": "tab"}))
            .unwrap();
        self.client()
            .post("/window", &json!({"handle": window["handle"]}))
            .unwrap();
    }

    /// A file that was downloaded, once it is whole.
    pub fn downloaded(&self, name: &str) -> PathBuf {
        let path = self.downloads.path().join(name);
        let began = Instant::now();
        while !path.exists() {
            assert!(began.elapsed() < PATIENCE, "{name} was not downloaded");
            std::thread::sleep(Duration::from_millis(20));
        }
        path
    }

    /// Chooses files where the page asks for some.
    pub fn pick(&self, opener: &str, files: &[&Path]) {
        // A browser opens its dialogue for a person's click alone; the field it belongs to is there.
        self.script(
            "document.querySelector(arguments[0]).click()",
            vec![json!(opener)],
        );
        let paths: Vec<String> = files
            .iter()
            .map(|path| path.display().to_string())
            .collect();
        self.script(
            "document.getElementById('picked').className = ''",
            Vec::new(),
        );
        self.type_in("#picked", &paths.join("\n"));
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if let Some(client) = self.client.take() {
            client.end();
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}
