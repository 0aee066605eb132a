//! A real browser, driven over WebDriver.

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use fantoccini::wd::Capabilities;
use fantoccini::{Client, ClientBuilder, Locator};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};

/// Chromium and its driver, with a profile and a folder for downloads of their own.
pub struct Browser {
    runtime: Runtime,
    client: Option<Client>,
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
        let runtime = Builder::new_current_thread().enable_all().build().unwrap();
        let mut capabilities = Capabilities::new();
        capabilities.insert("goog:loggingPrefs".to_owned(), json!({"browser": "ALL"}));
        capabilities.insert(
            "goog:chromeOptions".to_owned(),
            json!({
                "args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                    "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    "--window-size=1280,900", format!("--user-data-dir={}", profile.path().display())],
                "prefs": {"download.default_directory": downloads.path(), "download.prompt_for_download": false,
                    "profile.default_content_setting_values.automatic_downloads": 1},
            }),
        );
        let mut browser = Self {
            runtime,
            client: None,
            driver,
            _profile: profile,
            downloads,
        };
        let address = format!("http://127.0.0.1:{port}");
        let began = Instant::now();
        while browser.client.is_none() {
            let mut builder = ClientBuilder::new(HttpConnector::new());
            let connected = browser
                .runtime
                .block_on(builder.capabilities(capabilities.clone()).connect(&address));
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

    fn client(&self) -> &Client {
        self.client.as_ref().unwrap()
    }

    /// Opens an address and waits for the page to be ready.
    pub fn open(&self, address: &str) {
        self.runtime.block_on(self.client().goto(address)).unwrap();
        self.until("document.body.dataset.ready === 'yes'");
    }

    pub fn reload(&self) {
        self.runtime.block_on(self.client().refresh()).unwrap();
        self.until("document.body.dataset.ready === 'yes'");
    }

    pub fn script(&self, script: &str, args: Vec<Value>) -> Value {
        self.runtime
            .block_on(self.client().execute(script, args))
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
    fn with(&self, css: &str, act: &dyn Fn(&fantoccini::elements::Element) -> Result<(), String>) {
        self.until(&format!("document.querySelector({}) !== null", json!(css)));
        let mut last = String::new();
        for _ in 0..5 {
            match self.runtime.block_on(self.client().find(Locator::Css(css))) {
                Ok(element) => match act(&element) {
                    Ok(()) => return,
                    Err(error) => last = error,
                },
                Err(error) => last = error.to_string(),
            }
            std::thread::sleep(Duration::from_millis(60));
        }
        panic!("{css}: {last}");
    }

    pub fn click(&self, css: &str) {
        self.with(css, &|element| {
            self.runtime
                .block_on(element.click())
                .map_err(|e| e.to_string())
        });
    }

    pub fn type_in(&self, css: &str, text: &str) {
        self.with(css, &|element| {
            self.runtime
                .block_on(element.send_keys(text))
                .map_err(|e| e.to_string())
        });
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
        self.runtime
            .block_on(self.client().set_window_size(width, height))
            .unwrap();
    }

    /// Opens a second page, and goes on there.
    pub fn second(&self) {
        let window = self
            .runtime
            .block_on(self.client().new_window(true))
            .unwrap();
        self.runtime
            .block_on(self.client().switch_to_window(window.handle))
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
            let _ = self.runtime.block_on(client.close());
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}
