//! Reading how a job is printed.

use crate::job::{JobFont, PageTurn, PaperSize, PrintOptions, PrintTarget};
use crate::measurements::{FileCause, Node, NodeValue, Reader, nearest};
use crate::recipe::{length, truth, unknown, whole};
use serde::de::{Deserialize, Deserializer, Error as _};

/// What stands under `print`; what is left out is as usual.
pub(in crate::job) fn print(reader: &mut Reader, node: &Node) -> PrintOptions {
    let mut print = PrintOptions::default();
    let expected = "a mapping such as `{paper: a4}`";
    let keys = [
        "paper",
        "margin",
        "overlap",
        "orientation",
        "colour",
        "font",
        "for",
    ];
    let [paper, margin, overlap, turn, colour, font, target] =
        reader.fields(node, "print", keys, expected);
    if let Some((_, node)) = paper {
        print.paper = read_paper(reader, node).unwrap_or_default();
    }
    if let Some((_, node)) = turn {
        print.orientation = read_turn(reader, node).unwrap_or_default();
        if print.paper.is_roll() && print.orientation != PageTurn::FewerPages {
            let problem = format!(
                "a roll is not turned, and the paper is {}",
                print.paper.name()
            );
            let hint = "leave `orientation` out";
            reader.wrong(
                node.place,
                "print.orientation",
                FileCause::Senseless { problem, hint },
            );
        }
    }
    if let Some((_, node)) = margin {
        let read = length(reader, node, "print.margin", PrintOptions::MARGINS);
        print.margin = read.unwrap_or(print.margin);
    }
    if let Some((_, node)) = overlap {
        let read = length(reader, node, "print.overlap", PrintOptions::OVERLAPS);
        print.overlap = read.unwrap_or(print.overlap);
    }
    if let Some((_, node)) = colour {
        print.colour = truth(reader, node, "print.colour").unwrap_or_default();
    }
    if let Some((_, node)) = target {
        print.target = read_target(reader, node).unwrap_or_default();
    }
    if let Some((_, node)) = font {
        match &node.value {
            NodeValue::Text(path) if !path.trim().is_empty() => {
                print.font = Some(JobFont::new(path.trim()));
            }
            _ => reader.shape(node, "print.font", "the path of a font, such as `hand.ttf`"),
        }
    }
    print
}

/// A paper by its name; a wrong one is answered with all names, and with the one that was meant.
fn read_paper(reader: &mut Reader, node: &Node) -> Option<PaperSize> {
    let path = "print.paper";
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, path, "one word, such as `a4` or `roll-914`");
        return None;
    };
    let found = PaperSize::named(text.trim());
    if found.is_none() {
        let names = PaperSize::ALL.map(PaperSize::name);
        let all = format!("write one of `{}`", names.join("`, `"));
        let hint = match nearest(text.trim(), names.into_iter()) {
            Some(near) => format!("did you mean `{near}`? {all}"),
            None => all,
        };
        let word = text.trim().chars().take(40).collect();
        let what = "paper";
        reader.wrong(
            node.place,
            path,
            FileCause::UnknownWord { word, what, hint },
        );
    }
    found
}

/// What the pattern is put onto, by its name.
fn read_target(reader: &mut Reader, node: &Node) -> Option<PrintTarget> {
    let path = "print.for";
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, path, "`paper` or `projector`");
        return None;
    };
    let found = PrintTarget::named(text.trim());
    if found.is_none() {
        let names = PrintTarget::ALL.iter().map(|target| target.name());
        reader.wrong(node.place, path, unknown(text, "target", names));
    }
    found
}

/// A way round by its name, in any case.
fn read_turn(reader: &mut Reader, node: &Node) -> Option<PageTurn> {
    let path = "print.orientation";
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, path, "one word");
        return None;
    };
    let found = PageTurn::named(text.trim());
    if found.is_none() {
        let names = PageTurn::ALL.iter().map(|turn| turn.name());
        reader.wrong(node.place, path, unknown(text, "orientation", names));
    }
    found
}

/// From a name such as `a4` or `roll-914`.
impl<'de> Deserialize<'de> for PaperSize {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        whole(&Node::deserialize(deserializer)?, read_paper).map_err(D::Error::custom)
    }
}

/// From `fewer_pages`, `portrait` or `landscape`.
impl<'de> Deserialize<'de> for PageTurn {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        whole(&Node::deserialize(deserializer)?, read_turn).map_err(D::Error::custom)
    }
}

/// From what stands under `print` in a job file.
impl<'de> Deserialize<'de> for PrintOptions {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let node = Node::deserialize(deserializer)?;
        whole(&node, |reader, node| Some(print(reader, node))).map_err(D::Error::custom)
    }
}
