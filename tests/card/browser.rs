//! The card in a browser: on phone and tablet nothing runs over the edge, and it prints on the pages that it says.
#![allow(clippy::print_stderr, reason = "a test that could not look says so")]

use crate::card;
use std::fs;
use std::path::Path;
use std::process::Command;

/// Runs a headless Chromium in a folder; none, with a word about it, where there is no Chromium.
fn chromium(folder: &Path, flags: &[&str], page: &str) -> Option<String> {
    let usual = ["--headless", "--no-sandbox", "--disable-gpu", "--virtual-time-budget=4000"];
    let output = Command::new("chromium")
        .args(usual)
        .arg(format!("--user-data-dir={}", folder.join("profile").display()))
        .args(flags)
        .arg(format!("file://{}", folder.join(page).display()))
        .output();
    match output {
        Ok(output) => {
            assert!(output.status.success(), "chromium ended badly: {}", String::from_utf8_lossy(&output.stderr));
            Some(String::from_utf8(output.stdout).unwrap())
        }
        Err(error) => {
            eprintln!("SKIPPED, the card was not looked at: no chromium here ({error}); .ci/run wants one");
            assert!(std::env::var_os("SEATWISE_NEEDS_CHROMIUM").is_none(), "chromium is wanted, but is not there");
            None
        }
    }
}

/// Tells the page around it how wide it is and what stands over its right edge.
const MEASURE: &str = "<script>onload = () => { const wide = document.documentElement.clientWidth; \
    const over = [...document.querySelectorAll('body *')].filter(e => !e.closest('.picture svg') && \
    e.getBoundingClientRect().right > wide + 0.5).length; \
    parent.postMessage(`${location.hash.slice(1)} ${wide} ${document.documentElement.scrollWidth} ${over}`, '*') }</script></body>";

/// Widths of a narrow phone, a phone, a tablet and a desk, px.
const WIDTHS: [u32; 4] = [320, 390, 768, 1280];

#[test]
fn nothing_runs_over_the_edge_of_a_phone_or_a_tablet() {
    for job in ["examples/pump-case.toml", "examples/gear-cover.toml"] {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("card.html"), card(job, &[]).replace("</body>", MEASURE)).unwrap();
        let frame = |width| {
            format!("<iframe src=\"card.html#{width}\" style=\"width:{width}px;height:900px;border:0\"></iframe>")
        };
        let note = "<script>onmessage = e => { document.body.dataset.seen = (document.body.dataset.seen ?? '') + e.data + ';' }</script>";
        let frames = format!("<!DOCTYPE html><body>{note}{}</body>", WIDTHS.map(frame).concat());
        fs::write(folder.path().join("frames.html"), frames).unwrap();
        let Some(dump) = chromium(folder.path(), &["--window-size=1400,1000", "--dump-dom"], "frames.html") else {
            return;
        };
        let seen = dump.split("data-seen=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
        let mut asked: Vec<u32> = Vec::new();
        for line in seen.split_terminator(';') {
            let seen: Vec<u32> = line.split(' ').map(|number| number.parse().unwrap()).collect();
            let [width, laid_out, scrolls, over] = seen[..] else { panic!("{line}") };
            assert!(laid_out + 20 >= width && laid_out <= width, "{job} at {width} px was laid out at {laid_out} px");
            assert!(scrolls <= laid_out, "{job} at {width} px scrolls sideways: {scrolls} px");
            assert_eq!(over, 0, "{job} at {width} px: elements over the edge");
            asked.push(width);
        }
        asked.sort_unstable();
        assert_eq!(asked, WIDTHS, "{job}: every width was looked at");
    }
}

/// Pages of a PDF and the width of its first, in points.
fn pages(pdf: &[u8]) -> (usize, String) {
    let text = String::from_utf8_lossy(pdf);
    let pages = text.matches("/Type /Page").count() - text.matches("/Type /Pages").count();
    let size = text.split("/MediaBox [").nth(1).and_then(|rest| rest.split(']').next()).unwrap_or_default();
    (pages, size.to_owned())
}

/// Steps on a page of their own where they fill one; what is behind the numbers goes on below them where they end half-way down,
/// so that no page holds a few lines alone.
#[test]
fn a_card_prints_on_as_many_pages_of_either_paper_as_it_needs() {
    let jobs = [("pump-case", 2), ("conveyor-drive", 3), ("gear-cover", 3), ("mixer-seal", 1)];
    for (job, wanted) in jobs {
        for (paper, wide) in [("a4", 595), ("letter", 612)] {
            let folder = tempfile::tempdir().unwrap();
            let html = card(&format!("examples/{job}.toml"), &["--paper", paper]);
            fs::write(folder.path().join("card.html"), html).unwrap();
            let pdf = folder.path().join("card.pdf");
            let print = format!("--print-to-pdf={}", pdf.display());
            if chromium(folder.path(), &["--no-pdf-header-footer", &print], "card.html").is_none() {
                return;
            }
            let (pages, size) = pages(&fs::read(&pdf).unwrap());
            assert_eq!(pages, wanted, "{job} on {paper}");
            let found: f64 = size.split_whitespace().nth(2).unwrap().parse().unwrap();
            assert!((found - f64::from(wide)).abs() < 1.5, "{paper}: {size}");
        }
    }
}
