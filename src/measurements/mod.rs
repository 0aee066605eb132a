//! Named body measurements: taken, estimated, doubted.
