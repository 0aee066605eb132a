//! The outermost of a file: objects packed together, and the list of where each stands.
//!
//! Objects that are no streams are squeezed together in object streams, since pages differ in
//! little and most of their bytes are the same (PDF 1.5 and later).

use std::collections::BTreeMap;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::{Chunk, Filter, Name, Obj, Ref, Settings, Str};

/// How hard streams are squeezed, 1 to 10: small files, still in a few ms.
const SQUEEZE: u8 = 9;

/// How many objects are packed together.
const TOGETHER: usize = 200;

const HEADER: &[u8] = b"%PDF-1.7\n%\x80\x80\x80\x80\n";

/// Numbers of objects, each given out once.
#[derive(Default)]
pub(super) struct Ids(i32);

impl Ids {
    pub(super) fn next(&mut self) -> Ref {
        self.0 += 1;
        Ref::new(self.0)
    }
}

/// Where an object stands.
enum Place {
    /// By itself: how many bytes from the start of the file.
    At(usize),
    /// In an object stream, at that place of it.
    In(Ref, usize),
}

/// A file in the making.
pub(super) struct Container {
    bytes: Vec<u8>,
    places: BTreeMap<i32, Place>,
    loose: Vec<(Ref, Vec<u8>)>,
}

fn chunk() -> Chunk {
    Chunk::with_settings(Settings { pretty: false })
}

impl Container {
    pub(super) fn new() -> Self {
        Self {
            bytes: HEADER.to_vec(),
            places: BTreeMap::new(),
            loose: Vec::new(),
        }
    }

    /// Adds an object that is no stream.
    pub(super) fn object(&mut self, id: Ref, write: impl FnOnce(&mut Chunk)) {
        let mut one = chunk();
        write(&mut one);
        // "7 0 obj", the object, "endobj", each on a line.
        let head = format!("{} 0 obj\n", id.get()).len();
        let body = one.as_bytes().get(head..).unwrap_or_default();
        let body = body.strip_suffix(b"\nendobj\n\n").unwrap_or(body);
        let body = body.strip_suffix(b"\nendobj\n").unwrap_or(body);
        self.loose.push((id, body.to_vec()));
    }

    /// Adds a stream, squeezed if that makes it smaller; `write` is given what is to be written and
    /// whether it is squeezed.
    pub(super) fn stream(&mut self, id: Ref, data: &[u8], write: impl Fn(&mut Chunk, &[u8], bool)) {
        let squeezed = compress_to_vec_zlib(data, SQUEEZE);
        let mut one = chunk();
        // The name of the filter takes its bytes too.
        if squeezed.len() + 20 < data.len() {
            write(&mut one, &squeezed, true);
        } else {
            write(&mut one, data, false);
        }
        self.append(id, &one);
    }

    fn append(&mut self, id: Ref, one: &Chunk) {
        self.places.insert(id.get(), Place::At(self.bytes.len()));
        self.bytes.extend_from_slice(one.as_bytes());
    }

    /// The file: packs what is loose, and lists where everything stands.
    pub(super) fn finish(mut self, mut ids: Ids, root: Ref, info: Ref, file_id: &[u8]) -> Vec<u8> {
        let loose = std::mem::take(&mut self.loose);
        for packed in loose.chunks(TOGETHER) {
            self.pack(ids.next(), packed);
        }
        let id = ids.next();
        let start = self.bytes.len();
        self.places.insert(id.get(), Place::At(start));
        let last = self.places.keys().next_back().copied().unwrap_or(0);
        let mut table = vec![0_u8, 0, 0, 0, 0, 0, 255];
        for number in 1..=last {
            let (kind, first, second) = match self.places.get(&number) {
                Some(Place::At(at)) => (1, *at, 0),
                Some(Place::In(stream, index)) => (2, stream.get().unsigned_abs() as usize, *index),
                None => (0, 0, 0),
            };
            table.push(kind);
            #[expect(
                clippy::cast_possible_truncation,
                reason = "a file has far less than 4 GiB, and a stream few objects"
            )]
            let (first, second) = (first as u32, second as u16);
            table.extend(first.to_be_bytes());
            table.extend(second.to_be_bytes());
        }
        self.stream(id, &table, |one, data, squeezed| {
            let mut stream = one.stream(id, data);
            if squeezed {
                stream.filter(Filter::FlateDecode);
            }
            stream.pair(Name(b"Type"), Name(b"XRef"));
            stream.pair(Name(b"Size"), last + 1);
            stream.insert(Name(b"W")).array().items([1, 4, 2]);
            stream.pair(Name(b"Root"), root);
            stream.pair(Name(b"Info"), info);
            let twice = [Str(file_id), Str(file_id)];
            stream.insert(Name(b"ID")).array().items(twice);
        });
        self.bytes
            .extend(format!("startxref\n{start}\n%%EOF").bytes());
        self.bytes
    }

    fn pack(&mut self, id: Ref, objects: &[(Ref, Vec<u8>)]) {
        let mut head = String::new();
        let mut body: Vec<u8> = Vec::new();
        for (index, (object, bytes)) in objects.iter().enumerate() {
            self.places.insert(object.get(), Place::In(id, index));
            head.push_str(&format!("{} {} ", object.get(), body.len()));
            body.extend_from_slice(bytes);
            body.push(b'\n');
        }
        let first = i32::try_from(head.len()).unwrap_or(i32::MAX);
        let count = i32::try_from(objects.len()).unwrap_or(i32::MAX);
        let data = [head.into_bytes(), body].concat();
        self.stream(id, &data, |one, data, squeezed| {
            let mut stream = one.stream(id, data);
            if squeezed {
                stream.filter(Filter::FlateDecode);
            }
            stream.pair(Name(b"Type"), Name(b"ObjStm"));
            stream.pair(Name(b"N"), count);
            stream.pair(Name(b"First"), first);
        });
    }
}

/// Starts a dictionary as an object of its own.
pub(super) fn dictionary(one: &mut Chunk, id: Ref) -> pdf_writer::Dict<'_> {
    Obj::dict(one.indirect(id))
}
