//! A picture as a PNG file (ISO/IEC 15948): 8 bits for each of red, green and blue.

use miniz_oxide::deflate::compress_to_vec_zlib;

/// A picture in rows of red, green and blue bytes.
///
/// ```
/// use blockwright::toile::Picture;
/// fn file(picture: &Picture) -> Vec<u8> { picture.png() }
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    pub(super) wide: u32,
    pub(super) high: u32,
    pub(super) rows: Vec<u8>,
}

/// How hard the picture is compressed, of 10.
const LEVEL: u8 = 6;

impl Picture {
    /// Its width and height, in pixels.
    #[must_use]
    pub const fn size(&self) -> (u32, u32) {
        (self.wide, self.high)
    }

    /// The red, green and blue of every pixel, in rows from the top.
    #[must_use]
    pub fn pixels(&self) -> &[u8] {
        &self.rows
    }

    /// The picture as a PNG file.
    #[must_use]
    pub fn png(&self) -> Vec<u8> {
        let long = (3 * self.wide as usize).max(1);
        let mut filtered = Vec::with_capacity(self.rows.len() + self.high as usize);
        let mut above = vec![0u8; long];
        for row in self.rows.chunks_exact(long) {
            // The filter `up`: each byte less the one above it.
            filtered.push(2);
            filtered.extend(row.iter().zip(&above).map(|(b, a)| b.wrapping_sub(*a)));
            above.copy_from_slice(row);
        }
        let mut head = Vec::with_capacity(13);
        head.extend(self.wide.to_be_bytes());
        head.extend(self.high.to_be_bytes());
        head.extend([8, 2, 0, 0, 0]);
        let mut file = vec![0x89, b'P', b'N', b'G', 13, 10, 26, 10];
        chunk(&mut file, *b"IHDR", &head);
        chunk(&mut file, *b"IDAT", &compress_to_vec_zlib(&filtered, LEVEL));
        chunk(&mut file, *b"IEND", &[]);
        file
    }
}

fn chunk(file: &mut Vec<u8>, name: [u8; 4], data: &[u8]) {
    let long = u32::try_from(data.len()).unwrap_or(u32::MAX);
    file.extend(long.to_be_bytes());
    file.extend(name);
    file.extend(data);
    let mut sum = u32::MAX;
    for byte in name.iter().chain(data) {
        sum ^= u32::from(*byte);
        for _ in 0..8 {
            sum = if sum & 1 == 1 {
                0xEDB8_8320 ^ (sum >> 1)
            } else {
                sum >> 1
            };
        }
    }
    file.extend((!sum).to_be_bytes());
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An empty end chunk has the sum AE 42 60 82 in every PNG file.
    #[test]
    fn the_end_of_the_file_is_that_of_every_png() {
        let picture = Picture {
            wide: 2,
            high: 1,
            rows: vec![255, 0, 0, 0, 0, 255],
        };
        let file = picture.png();
        assert!(file.ends_with(&[0, 0, 0, 0, b'I', b'E', b'N', b'D', 0xAE, 0x42, 0x60, 0x82]));
        assert_eq!(file[16..24], [0, 0, 0, 2, 0, 0, 0, 1]);
    }
}
