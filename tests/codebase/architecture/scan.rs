//! A source file as tokens, and the paths that it names.

/// The tokens of a file: names, `::`, and single signs; comments, strings and test items gone.
#[derive(Debug, Clone)]
pub struct Scanned {
    tokens: Vec<String>,
}

/// A path named in a file: where it starts (`crate`, `super`, or a name of a `use`) and its
/// segments, with the name under which a `use` makes it known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    pub segments: Vec<String>,
    /// The last name, or the one after `as`.
    pub known_as: String,
}

pub fn scan(text: &str) -> Scanned {
    Scanned {
        tokens: without_test_items(tokens(text)),
    }
}

/// Where the raw string that starts at `at` ends, if one does.
fn raw_string_end(chars: &[char], at: usize) -> Option<usize> {
    let mut i = at;
    if matches!(chars.get(i), Some('b' | 'c')) {
        i += 1;
    }
    if chars.get(i) != Some(&'r') {
        return None;
    }
    i += 1;
    let hashes = chars[i..].iter().take_while(|c| **c == '#').count();
    i += hashes;
    if chars.get(i) != Some(&'"') {
        return None;
    }
    i += 1;
    while i < chars.len() {
        let closes = chars[i] == '"' && chars[i + 1..].iter().take(hashes).all(|c| *c == '#');
        if closes {
            return Some(i + 1 + hashes);
        }
        i += 1;
    }
    Some(i)
}

fn quoted_end(chars: &[char], start: usize, quote: char) -> usize {
    let mut i = start + 1;
    while i < chars.len() && chars[i] != quote {
        i += if chars[i] == '\\' { 2 } else { 1 };
    }
    i + 1
}

fn block_comment_end(chars: &[char], start: usize) -> usize {
    let (mut i, mut depth) = (start, 0);
    while i < chars.len() {
        match (chars[i], chars.get(i + 1)) {
            ('/', Some('*')) => {
                depth += 1;
                i += 2;
            }
            ('*', Some('/')) => {
                depth -= 1;
                i += 2;
                if depth == 0 {
                    break;
                }
            }
            _ => i += 1,
        }
    }
    i
}

fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut i = 0;
    while i < chars.len() {
        let (c, next) = (chars[i], chars.get(i + 1).copied());
        if c.is_whitespace() {
            i += 1;
        } else if c == '/' && next == Some('/') {
            while i < chars.len() && chars[i] != '\n' {
                i += 1;
            }
        } else if c == '/' && next == Some('*') {
            i = block_comment_end(&chars, i);
        } else if let Some(end) = raw_string_end(&chars, i) {
            i = end;
        } else if c == '"' {
            i = quoted_end(&chars, i, '"');
        } else if c == '\'' {
            // A character ends with a quote soon; a lifetime has none.
            let is_char = next == Some('\\') || chars.get(i + 2) == Some(&'\'');
            i = if is_char {
                quoted_end(&chars, i, '\'')
            } else {
                i + 1
            };
        } else if c == '_' || c.is_alphanumeric() {
            let start = i;
            while i < chars.len() && (chars[i] == '_' || chars[i].is_alphanumeric()) {
                i += 1;
            }
            // The `b` of a byte string is no name.
            let prefix = i - start == 1 && c == 'b' && matches!(chars.get(i), Some('"' | '\''));
            if !prefix {
                found.push(chars[start..i].iter().collect());
            }
        } else if c == ':' && next == Some(':') {
            found.push("::".to_owned());
            i += 2;
        } else {
            found.push(c.to_string());
            i += 1;
        }
    }
    found
}

/// The index behind the bracket that closes the one at `open`.
fn closing(tokens: &[String], open: usize) -> usize {
    let mut depth = 0;
    for (i, token) in tokens.iter().enumerate().skip(open) {
        match token.as_str() {
            "{" | "(" | "[" => depth += 1,
            "}" | ")" | "]" => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return i + 1;
        }
    }
    tokens.len()
}

/// The index behind the item at `at`, its attributes included.
fn item_end(tokens: &[String], mut at: usize) -> usize {
    while at < tokens.len() {
        match tokens[at].as_str() {
            ";" => return at + 1,
            "{" => return closing(tokens, at),
            "(" | "[" => at = closing(tokens, at),
            // The braces of a `use` do not end it.
            "use" => {
                while at < tokens.len() && tokens[at] != ";" {
                    at += 1;
                }
            }
            _ => at += 1,
        }
    }
    at
}

fn without_test_items(tokens: Vec<String>) -> Vec<String> {
    let mark = ["#", "[", "cfg", "(", "test", ")", "]"];
    let mut kept = Vec::new();
    let mut i = 0;
    while i < tokens.len() {
        let marked =
            tokens.len() >= i + mark.len() && (0..mark.len()).all(|k| tokens[i + k] == mark[k]);
        if marked {
            i = item_end(&tokens, i + mark.len());
        } else {
            kept.push(tokens[i].clone());
            i += 1;
        }
    }
    kept
}

impl Scanned {
    fn is(&self, at: usize, token: &str) -> bool {
        self.tokens.get(at).is_some_and(|t| t == token)
    }

    /// Every path that starts with `crate`, `super` or `self`, in a `use` or in code.
    pub fn paths(&self) -> Vec<Named> {
        let mut found = Vec::new();
        for (i, token) in self.tokens.iter().enumerate() {
            let starts = ["crate", "super", "self"].contains(&token.as_str())
                && self.is(i + 1, "::")
                && (i == 0 || !self.is(i - 1, "::"));
            if starts {
                self.tree(i, &[], &mut found);
            }
        }
        found
    }

    /// What `use` makes known of the modules declared in this file: paths that start with one.
    pub fn reexports(&self) -> Vec<Named> {
        let mut found = Vec::new();
        for (i, token) in self.tokens.iter().enumerate() {
            if token == "use" {
                self.tree(i + 1, &[], &mut found);
            }
        }
        found
    }

    /// Whether a module with a body stands in the file, other than tests.
    pub fn inline_module(&self) -> Option<&str> {
        let at = (0..self.tokens.len()).find(|i| self.is(*i, "mod") && self.is(*i + 2, "{"))?;
        Some(&self.tokens[at + 1])
    }

    /// Reads the tree of a `use`, or a plain path, from `at`; answers where it ends.
    fn tree(&self, mut at: usize, before: &[String], found: &mut Vec<Named>) -> usize {
        let mut segments = before.to_vec();
        loop {
            let Some(token) = self.tokens.get(at) else {
                return at;
            };
            if token == "{" {
                at += 1;
                while at < self.tokens.len() && !self.is(at, "}") {
                    let end = self.tree(at, &segments, found);
                    at = if self.is(end, ",") {
                        end + 1
                    } else {
                        end.max(at + 1)
                    };
                    if self.is(end, "}") {
                        at = end;
                    }
                }
                return at + 1;
            }
            let name = token == "*" || token.chars().all(|c| c == '_' || c.is_alphanumeric());
            if !name {
                break;
            }
            segments.push(token.clone());
            at += 1;
            if !self.is(at, "::") || self.is(at + 1, "<") {
                break;
            }
            at += 1;
        }
        let mut known_as = segments.last().cloned().unwrap_or_default();
        if self.is(at, "as") {
            known_as = self.tokens.get(at + 1).cloned().unwrap_or_default();
            at += 2;
        }
        found.push(Named { segments, known_as });
        at
    }

    /// The first thing in the file that is no `mod x;` and no `use`.
    pub fn other_item(&self) -> Option<String> {
        let mut at = 0;
        while at < self.tokens.len() {
            match self.tokens[at].as_str() {
                "#" => {
                    at += if self.is(at + 1, "!") { 2 } else { 1 };
                    at = closing(&self.tokens, at);
                }
                "pub" => {
                    at += 1;
                    if self.is(at, "(") {
                        at = closing(&self.tokens, at);
                    }
                }
                "mod" if self.is(at + 2, ";") => at += 3,
                "use" => {
                    while at < self.tokens.len() && !self.is(at, ";") {
                        at += 1;
                    }
                    at += 1;
                }
                other => return Some(format!("{other} …")),
            }
        }
        None
    }
}
