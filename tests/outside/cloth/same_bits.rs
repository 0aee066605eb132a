//! The same cloth comes to rest in the same place, to the last bit, on any thread.

use super::meshes::{cloth, rectangle, rest, sheet};
use blockwright::toile::Hold;

fn hung() -> Vec<u64> {
    let (points, triangles) = rectangle(120.0, 120.0, 20.0);
    let hung = sheet(&points, &triangles, |p| {
        if p[1] > 119.0 && p[0] < 70.0 {
            Hold::Still
        } else {
            Hold::Free
        }
    });
    let mut places: Vec<_> = points
        .iter()
        .map(|p| [p[0], p[1], 0.01 * p[0] * p[1] / 120.0])
        .collect();
    rest(&hung, &mut places, cloth(150.0, 15.0, 1000.0), None, 0.01);
    places.iter().flatten().map(|v| v.to_bits()).collect()
}

#[test]
fn the_same_cloth_rests_in_the_same_bits() {
    let here = hung();
    let there = std::thread::spawn(hung).join().expect("a thread");
    assert_eq!(here, there);
}
