//! The page in a real browser: how long from a slider moved to the new drawing painted, for a dress
//! with sleeve and five steps; how long from the command to the first page; what the page weighs.
//!
//! It needs `chromium`, `chromedriver`, and the command: `cargo build --release`, or another by
//! `BLOCKWRIGHT_BIN`.

use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use fantoccini::wd::Capabilities;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

type Fallible<T> = Result<T, Box<dyn std::error::Error>>;

/// How often a slider is moved.
const MOVES: usize = 200;

const JOB: &str = "title: Dress
block: dress
sleeve: long
body: {name: Ines, unit: cm, measurements: {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100, back_waist_length: 40.5}}
alterations:
  - back_length_reduction: {amount: 12, hips_checked: true}
  - shoulder_slope: {degrees: 2}
  - bust: {amount: 6}
  - waist_girth: {amount: 12}
  - upper_arm: {amount: 10}
";

/// Moves a slider as a hand does, and waits for the frame after the new drawing.
const MOVE: &str = "
const [slider, moves, done] = [document.querySelectorAll('.card input[type=range]')[arguments[0]], arguments[1], arguments[2]];
const cloth = document.querySelector('#board .cloth');
const painted = () => new Promise((done) => requestAnimationFrame(() => {
  const after = new MessageChannel();
  after.port1.onmessage = done;
  after.port2.postMessage(0);
}));
const once = (value) => new Promise((done) => {
  const began = performance.now();
  const seen = new MutationObserver(async () => {
    seen.disconnect();
    await painted();
    done(performance.now() - began);
  });
  seen.observe(cloth, { childList: true });
  slider.value = value;
  slider.dispatchEvent(new Event('input', { bubbles: true }));
});
(async () => {
  const took = [];
  for (let at = 0; at < moves; at += 1) {
    // Back and forth over the middle of what holds, so that every move is one.
    const [low, high] = [Number(slider.min), Number(slider.max)];
    took.push(await once(low + (high - low) * (0.3 + at * 7 % 23 / 46)));
    await new Promise((done) => setTimeout(done, 40));
  }
  done(took);
})();";

struct Ended(Child);

impl Drop for Ended {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

fn command() -> PathBuf {
    std::env::var_os("BLOCKWRIGHT_BIN").map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/release/blockwright"),
        PathBuf::from,
    )
}

fn serve(folder: &Path) -> Fallible<(Ended, String)> {
    let mut child = Command::new(command())
        .args(["page", "--no-open"])
        .arg(folder)
        .stdout(Stdio::piped())
        .spawn()?;
    let mut line = String::new();
    let out = child.stdout.take().ok_or("no output")?;
    BufReader::new(out).read_line(&mut line)?;
    Ok((Ended(child), line.trim().to_owned()))
}

async fn browser(profile: &Path) -> Fallible<(Ended, Client)> {
    let port = std::net::TcpListener::bind("127.0.0.1:0")?.local_addr()?.port();
    let driver = Command::new("chromedriver")
        .arg(format!("--port={port}"))
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()?;
    let driver = Ended(driver);
    let mut capabilities = Capabilities::new();
    let profile = format!("--user-data-dir={}", profile.display());
    capabilities.insert(
        "goog:chromeOptions".to_owned(),
        json!({"args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--window-size=1280,900", profile]}),
    );
    let address = format!("http://127.0.0.1:{port}");
    let began = Instant::now();
    loop {
        let mut builder = ClientBuilder::new(HttpConnector::new());
        match builder.capabilities(capabilities.clone()).connect(&address).await {
            Ok(client) => return Ok((driver, client)),
            Err(error) if began.elapsed() > Duration::from_secs(20) => return Err(error.into()),
            Err(_) => tokio::time::sleep(Duration::from_millis(100)).await,
        }
    }
}

async fn until(client: &Client, expression: &str) -> Fallible<()> {
    let began = Instant::now();
    while client.execute(&format!("return {expression}"), Vec::new()).await? != true {
        if began.elapsed() > Duration::from_secs(20) {
            return Err(format!("waited for {expression}").into());
        }
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
    Ok(())
}

async fn measure() -> Fallible<()> {
    let folder = tempfile::tempdir()?;
    std::fs::write(folder.path().join("job.yaml"), JOB)?;
    let profile = tempfile::tempdir()?;
    let (_driver, client) = browser(profile.path()).await?;
    let began = Instant::now();
    let (_served, address) = serve(folder.path())?;
    client.goto(&address).await?;
    until(&client, "document.body.dataset.ready === 'yes'").await?;
    println!("command to page ready, with a job opened: {:.0} ms", began.elapsed().as_secs_f64() * 1e3);
    let weight = "performance.getEntriesByType('resource').concat(performance.getEntriesByType('navigation'))\
                  .filter((one) => !one.name.endsWith('/message')).reduce((sum, one) => sum + one.transferSize, 0)";
    let weight = client.execute(&format!("return {weight}"), Vec::new()).await?;
    println!("page weight, headers too: {:.1} kB", weight.as_f64().unwrap_or(f64::NAN) / 1e3);
    client.execute("document.querySelector('#tab-fitting').click()", Vec::new()).await?;
    until(&client, "document.querySelectorAll('.card').length === 5").await?;
    tokio::time::sleep(Duration::from_millis(1500)).await;
    let mut all = Vec::new();
    for slider in 0..5 {
        let took = client.execute_async(MOVE, vec![json!(slider), json!(MOVES / 5)]).await?;
        let took: Vec<f64> = took.as_array().into_iter().flatten().filter_map(Value::as_f64).collect();
        all.extend(took);
    }
    all.sort_by(f64::total_cmp);
    let at = |share: f64| all[((all.len() - 1) as f64 * share).round() as usize];
    println!(
        "slider moved to drawing painted, {} moves: median {:.1} ms, 95th percentile {:.1} ms, most {:.1} ms",
        all.len(), at(0.5), at(0.95), at(1.0),
    );
    client.close().await?;
    if at(0.95) > 33.0 {
        return Err("the 95th percentile is above 33 ms".into());
    }
    Ok(())
}

fn main() -> Fallible<()> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
    runtime.block_on(measure())
}
