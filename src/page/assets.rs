//! The files of the page, built in.

/// A file of the page.
pub(super) struct Asset {
    pub path: &'static str,
    pub kind: &'static str,
    pub text: &'static str,
}

macro_rules! assets {
    ($($path:literal, $file:literal, $kind:expr;)+) => {
        &[$(Asset { path: $path, kind: $kind, text: include_str!(concat!("web/", $file)) }),+]
    };
}

const HTML: &str = "text/html; charset=utf-8";
const STYLE: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
const ICON: &str = "image/svg+xml";

pub(super) const ASSETS: &[Asset] = assets! {
    "/", "index.html", HTML;
    "/style.css", "style.css", STYLE;
    "/icon.svg", "icon.svg", ICON;
    "/main.js", "main.js", SCRIPT;
    "/link.js", "link.js", SCRIPT;
    "/state.js", "state.js", SCRIPT;
    "/parts.js", "parts.js", SCRIPT;
    "/lengths.js", "lengths.js", SCRIPT;
    "/wearer.js", "wearer.js", SCRIPT;
    "/pattern.js", "pattern.js", SCRIPT;
    "/board.js", "board.js", SCRIPT;
    "/fitmap.js", "fitmap.js", SCRIPT;
    "/fitting.js", "fitting.js", SCRIPT;
    "/report.js", "report.js", SCRIPT;
    "/out.js", "out.js", SCRIPT;
};

#[cfg(test)]
mod tests {
    use super::ASSETS;

    /// All of it together stays below 150 kB, and nothing in it comes from elsewhere.
    #[test]
    fn the_page_is_small_and_whole() {
        let weight: usize = ASSETS.iter().map(|asset| asset.text.len()).sum();
        assert!(weight <= 150_000, "{weight} bytes");
        for asset in ASSETS {
            for foreign in ["http://", "https://", "//cdn"] {
                let text = asset.text.replace("http://www.w3.org/", "");
                assert!(!text.contains(foreign), "{}: {foreign}", asset.path);
            }
        }
    }
}
