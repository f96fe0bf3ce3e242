//! A page that a strict parser takes, that fetches nothing and that a screen reader can walk.

use crate::{all, card, card_of, made};
use scraper::Html;

const JOBS: [&str; 6] = [
    "examples/pump-case.toml",
    "examples/gear-cover.toml",
    "examples/core-plug.toml",
    "examples/fan-shaft.toml",
    "examples/conveyor-drive.toml",
    "examples/mixer-seal.toml",
];

#[test]
fn a_strict_parser_finds_no_mistake_and_nothing_is_fetched_or_run() {
    for job in JOBS {
        let text = card(job, &[]);
        let page = Html::parse_document(&text);
        assert!(page.errors.is_empty(), "{job}: {:?}", page.errors);
        assert!(all(&page, "script, link, img, iframe, object, base, form").is_empty(), "{job}");
        let references = all(&page, "[src], [href], [srcset], [action], [onclick], [onload]");
        assert!(references.is_empty(), "{job}: {:?}", references[0].html());
        for fetched in ["http:", "https:", "//fonts", "@import"] {
            assert!(!text.contains(fetched), "{job} holds {fetched}");
        }
        assert!(text.split("url(").skip(1).all(|rest| rest.starts_with("data:font/otf;base64,")), "{job}");
    }
}

#[test]
fn headings_stand_in_order_and_pictures_have_names() {
    for job in JOBS {
        let text = card(job, &[]);
        let page = Html::parse_document(&text);
        let levels: Vec<u8> =
            all(&page, "h1, h2, h3, h4, h5, h6").iter().map(|h| h.value().name().as_bytes()[1] - b'0').collect();
        assert_eq!(levels.first(), Some(&1), "{job}");
        assert_eq!(levels.iter().filter(|level| **level == 1).count(), 1, "{job}: one first heading");
        assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1), "{job} skips a level: {levels:?}");
        assert_eq!(all(&page, "html[lang=en]").len(), 1, "{job}");
        assert_eq!(all(&page, "main").len(), 1, "{job}");
        let pictures = all(&page, ".picture > svg");
        assert!(
            pictures.iter().all(|svg| svg.select(&scraper::Selector::parse("title").unwrap()).count() == 1),
            "{job}"
        );
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    for job in ["examples/pump-case.toml", "examples/gear-cover.toml"] {
        assert_eq!(made(job, &[]), card(job, &[]), "{job}");
    }
}

#[test]
fn what_the_job_says_is_shown_as_words_and_not_taken_as_markup() {
    let text = card_of(&SEAL.replace("TITLE", "<script>alert(1)</script> & \\\"seal\\\""));
    let page = Html::parse_document(&text);
    assert!(page.errors.is_empty(), "{:?}", page.errors);
    assert!(all(&page, "script").is_empty());
    assert_eq!(all(&page, "h1")[0].text().collect::<String>(), "<script>alert(1)</script> & \"seal\"");
}

const SEAL: &str = "title = \"TITLE\"\n[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\n";
