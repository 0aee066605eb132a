//! Every named path of a drawing, in millimetres.

use super::TracedError;
use super::fault::{fault, short};
use super::named_path::{NamedPath, taken_apart};
use super::shapes::shape;
use super::viewport::viewport;
use crate::geometry::kurbo::{Affine, PathEl};
use crate::geometry::on_paper;
use roxmltree::{Document, Error, Node, ParsingOptions};
use svgtypes::Transform;

/// The most elements of a drawing: a whole pattern with all its words has a thousand.
const MOST_NODES: u32 = 50_000;

/// How deeply groups may lie in one another.
const DEEPEST: usize = 100;

/// What is drawn nowhere, or only where something refers to it.
const NOT_DRAWN: [&str; 6] = ["defs", "symbol", "clipPath", "mask", "pattern", "marker"];

/// The named paths, in the order of the text. `names` gives ids of the drawing other names.
pub(super) fn named_paths(
    text: &str,
    names: &[(String, String)],
) -> Result<Vec<NamedPath>, TracedError> {
    let options = ParsingOptions {
        nodes_limit: MOST_NODES,
        ..ParsingOptions::default()
    };
    let document = Document::parse_with_options(text, options).map_err(|error| {
        let at = error.pos();
        TracedError::NotSvg {
            line: at.row,
            column: at.col,
            problem: match error {
                Error::DtdDetected => "it has a `<!DOCTYPE` declaration; delete it".to_owned(),
                Error::NodesLimitReached => format!("it has more than {MOST_NODES} elements"),
                _ => "its XML is broken there".to_owned(),
            },
        }
    })?;
    let root = document.root_element();
    if root.tag_name().name() != "svg" {
        let problem = format!(
            "the outermost element is `{}`",
            short(root.tag_name().name())
        );
        return Err(TracedError::NotSvg {
            line: 1,
            column: 1,
            problem,
        });
    }
    for (id, name) in names {
        if !root
            .descendants()
            .any(|node| node.attribute("id") == Some(id.as_str()))
        {
            let place = format!(
                "`edges` calls it `{}`, but nothing has this id",
                short(name)
            );
            let name = short(id);
            return Err(TracedError::Missing { name, place });
        }
    }
    let mut found = Vec::new();
    for node in root.descendants().filter(Node::is_element) {
        if let Some(named) = named_path(node, names)? {
            found.push(named);
        }
    }
    Ok(found)
}

fn named_path(
    node: Node<'_, '_>,
    names: &[(String, String)],
) -> Result<Option<NamedPath>, TracedError> {
    if !matches!(
        node.tag_name().name(),
        "path" | "line" | "polyline" | "polygon" | "rect" | "circle" | "ellipse" | "use"
    ) {
        return Ok(None);
    }
    let around: Vec<Node<'_, '_>> = node.ancestors().filter(Node::is_element).collect();
    if around
        .iter()
        .any(|n| NOT_DRAWN.contains(&n.tag_name().name()))
    {
        return Ok(None);
    }
    if around.len() > DEEPEST {
        return Err(fault(
            node,
            "it lies too deep in groups",
            "take the groups apart",
        ));
    }
    let called = |node: &Node<'_, '_>| {
        let id = node.attribute("id")?;
        let other = names.iter().find(|(known, _)| known.as_str() == id);
        taken_apart(other.map_or(id, |(_, name)| name))
    };
    let Some((piece, part)) = around.iter().find_map(called) else {
        return Ok(None);
    };
    if node.tag_name().name() == "use" {
        let cure = "draw the path itself there";
        return Err(fault(
            node,
            "references to paths elsewhere are not followed",
            cure,
        ));
    }
    let Some(path) = shape(node)? else {
        return Ok(None);
    };
    let mut to_paper = Affine::IDENTITY;
    for outer in around.iter().rev() {
        if let Some(text) = outer.attribute("transform") {
            let read: Result<Transform, _> = text.parse();
            let Transform { a, b, c, d, e, f } = read.map_err(|_| {
                let cure = "write it as SVG has it, such as `translate(10 20)`";
                fault(*outer, "its `transform` cannot be read", cure)
            })?;
            to_paper *= Affine::new([a, b, c, d, e, f]);
        }
        if outer.tag_name().name() == "svg" {
            let outermost = outer.parent_element().is_none();
            to_paper *= viewport(*outer, outermost)?;
        }
    }
    let path = to_paper * path;
    let far = path.elements().iter().filter_map(PathEl::end_point);
    if far.into_iter().any(|at| on_paper(at).is_err()) {
        return Err(fault(
            node,
            "it lies far off the paper",
            "draw it in true size",
        ));
    }
    let at = node.document().text_pos_at(node.range().start);
    Ok(Some(NamedPath {
        piece,
        part,
        path,
        line: at.row,
        column: at.col,
    }))
}
