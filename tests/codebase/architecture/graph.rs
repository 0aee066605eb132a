//! Which file uses which, and what is wrong with that.

use super::scan::{Named, Scanned};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// The files of the crate by module path: `["piece", "edge"]` is `piece/edge.rs`.
pub struct Sources {
    files: BTreeMap<Vec<String>, (String, Scanned)>,
}

/// Files that reach each other, and the shortest way round from the first.
#[derive(Debug, Clone)]
pub struct Cycle {
    /// Every file of the group, sorted.
    pub files: Vec<String>,
    way: Vec<String>,
}

impl fmt::Display for Cycle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "cycle: {}", self.way.join(" -> "))?;
        let rest = self.files.len() + 1 - self.way.len();
        if rest > 0 {
            write!(f, " (one of several; the group: {})", self.files.join(", "))?;
        }
        Ok(())
    }
}

impl Sources {
    /// Sources from pairs of path and scanned text.
    pub fn new<'a>(files: impl Iterator<Item = (&'a str, Scanned)>) -> Self {
        let files = files
            .map(|(path, scanned)| {
                let mut module: Vec<String> = path
                    .trim_end_matches(".rs")
                    .split('/')
                    .map(str::to_owned)
                    .collect();
                if matches!(module.last().map(String::as_str), Some("mod" | "lib")) {
                    module.pop();
                }
                (module, (path.to_owned(), scanned))
            })
            .collect();
        Self { files }
    }

    /// The path from the crate's root of a path named in the file of `module`.
    fn absolute(module: &[String], named: &Named) -> Vec<String> {
        let mut at = module.to_vec();
        for (index, segment) in named.segments.iter().enumerate() {
            match segment.as_str() {
                "crate" if index == 0 => at.clear(),
                "self" => {}
                "super" => {
                    at.pop();
                }
                name => at.push(name.to_owned()),
            }
        }
        at
    }

    /// The file in which a path's item stands, following the `use`s of the files between.
    fn owner(&self, path: &[String]) -> Option<&Vec<String>> {
        self.owner_within(path, 8)
    }

    fn owner_within(&self, path: &[String], patience: u8) -> Option<&Vec<String>> {
        let depth = (1..=path.len())
            .rev()
            .find(|n| self.files.contains_key(&path[..*n]))?;
        let (module, (_, scanned)) = self.files.get_key_value(&path[..depth])?;
        let Some(item) = path.get(depth) else {
            return Some(module);
        };
        let through = scanned
            .reexports()
            .into_iter()
            .find(|u| u.known_as == *item);
        match through {
            Some(named) if patience > 0 => {
                // A `use` may start at a module declared beside it.
                let target = Self::absolute(module, &named);
                if target == path {
                    return Some(module);
                }
                self.owner_within(&target, patience - 1).or(Some(module))
            }
            _ => Some(module),
        }
    }
}

/// Uses of modules beside or above, or of none that is known.
pub fn floor_faults(sources: &Sources, floors: &[(&str, i8)]) -> Vec<String> {
    let floor = |name: &str| floors.iter().find(|(n, _)| *n == name).map(|(_, f)| *f);
    let mut faults = Vec::new();
    for (module, (file, scanned)) in &sources.files {
        if let Some(name) = scanned.inline_module() {
            faults.push(format!(
                "{file}: module `{name}` has its body here; give it a file"
            ));
        }
        // The root and the binary stand above everything.
        let Some(own) = module.first().filter(|m| *m != "main") else {
            continue;
        };
        let Some(own_floor) = floor(own) else {
            faults.push(format!("{file}: module `{own}` has no floor"));
            continue;
        };
        let used: BTreeSet<String> = scanned
            .paths()
            .iter()
            .filter_map(|named| Sources::absolute(module, named).first().cloned())
            .filter(|used| used != own)
            .collect();
        for used in used {
            match floor(&used) {
                None => faults.push(format!("{file}: uses `{used}`, which has no floor")),
                Some(f) if f == own_floor => {
                    faults.push(format!("{file}: uses `{used}`, beside it on floor {f}"));
                }
                Some(f) if f > own_floor => {
                    faults.push(format!("{file}: uses `{used}`, above it on floor {f}"));
                }
                Some(_) => {}
            }
        }
    }
    faults
}

type Graph<'a> = BTreeMap<&'a [String], BTreeSet<&'a [String]>>;

/// Every group of files inside one module that reach each other.
///
/// A `mod.rs` only gathers, so it is no member: what is used through it is looked up where it
/// stands. Nor are the `tables`.
pub fn cycles(sources: &Sources, tables: &[&str]) -> Vec<Cycle> {
    let mut graph = Graph::new();
    for (module, (path, scanned)) in &sources.files {
        if module.is_empty() || path.ends_with("mod.rs") || tables.contains(&path.as_str()) {
            continue;
        }
        let uses = scanned
            .paths()
            .iter()
            .filter_map(|named| sources.owner(&Sources::absolute(module, named)))
            .filter(|used| used.first() == module.first() && *used != module)
            .filter(|used| !sources.files[*used].0.ends_with("mod.rs"))
            .map(Vec::as_slice)
            .collect();
        graph.insert(module.as_slice(), uses);
    }
    let mut done: BTreeSet<&[String]> = BTreeSet::new();
    let mut found = Vec::new();
    for start in graph.keys() {
        if done.contains(start) {
            continue;
        }
        let ahead = reached(&graph, start);
        let group: Vec<&[String]> = ahead
            .iter()
            .copied()
            .filter(|other| reached(&graph, other).contains(start))
            .collect();
        if !group.contains(start) {
            continue;
        }
        done.extend(&group);
        let file = |module: &[String]| sources.files[module].0.clone();
        found.push(Cycle {
            files: group.iter().map(|m| file(m)).collect(),
            way: way_round(&graph, start).iter().map(|m| file(m)).collect(),
        });
    }
    found
}

/// What can be reached from a file in one step or more.
fn reached<'a>(graph: &Graph<'a>, from: &[String]) -> BTreeSet<&'a [String]> {
    let mut seen = BTreeSet::new();
    let mut open: Vec<&[String]> = graph.get(from).into_iter().flatten().copied().collect();
    while let Some(at) = open.pop() {
        if seen.insert(at) {
            open.extend(graph.get(at).into_iter().flatten());
        }
    }
    seen
}

/// The shortest way from a file back to itself.
fn way_round<'a>(graph: &Graph<'a>, start: &'a [String]) -> Vec<&'a [String]> {
    let mut ways = std::collections::VecDeque::from([vec![start]]);
    let mut seen = BTreeSet::new();
    while let Some(way) = ways.pop_front() {
        let last = way[way.len() - 1];
        for next in graph.get(last).into_iter().flatten() {
            let mut longer = way.clone();
            longer.push(next);
            if *next == start {
                return longer;
            }
            if seen.insert(*next) {
                ways.push_back(longer);
            }
        }
    }
    vec![start]
}
