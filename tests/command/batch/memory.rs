//! The memory does not grow with the table.

#[cfg(target_os = "linux")]
#[test]
fn ten_times_the_people_take_no_more_memory() {
    use super::company::{HEADER, place, results};
    use std::fmt::Write as _;
    use std::process::Stdio;
    use std::time::Duration;

    // Wide rows that are refused at once: what matters is that none is kept.
    let peak = |rows: u32| -> u64 {
        let mut table = HEADER.trim_end().to_owned() + ",notes\n";
        for n in 0..rows {
            writeln!(table, "p{n},1680,920,,1000,{}", "x".repeat(2000)).unwrap();
        }
        let place = place("title: S\nblock: skirt\n", table);
        let mut child = place
            .command(&["batch", "job.yaml", "people.csv", "-o", "out"])
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        let mut peak = 0;
        while child.try_wait().unwrap().is_none() {
            let status = std::fs::read_to_string(format!("/proc/{}/status", child.id()));
            let status = status.unwrap_or_default();
            let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:"));
            let found = line.and_then(|l| l.trim().trim_end_matches(" kB").parse().ok());
            peak = peak.max(found.unwrap_or(0));
            std::thread::sleep(Duration::from_millis(2));
        }
        assert_eq!(results(&place).lines().count(), rows as usize);
        peak
    };
    let (few, many) = (peak(2_000), peak(20_000));
    eprintln!("peak memory: 2,000 rows {few} kB, 20,000 rows {many} kB");
    assert!(few > 0);
    // The table of 20,000 is 40 MB.
    assert!(many < few + 6_000, "{few} kB, then {many} kB");
}
