//! What people write for a thread, brought to one spelling.

/// Capitals, one sign for "by", points for commas, no inch marks, single spaces and none about signs.
pub(super) fn tidy(given: &str) -> String {
    let text = given.trim().to_uppercase().replace(['×', '*'], "X").replace(',', ".").replace(['"', '″', '”'], "");
    let text = text.replace("NO.", "#").replace("NO ", "#").replace(['–', '—', '−'], "-");
    let mut text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for sign in ["X", "-", "#", "/"] {
        text = text.replace(&format!(" {sign}"), sign).replace(&format!("{sign} "), sign);
    }
    text
}

/// The text without a tolerance class of ISO 965-1 or ASME B1.1 at its end: `6G`, `5H6H`, `2A`.
pub(super) fn without_class(text: &str) -> &str {
    let Some((rest, class)) = text.rsplit_once(['-', ' ']) else { return text };
    let pairs = class.as_bytes().chunks(2).all(|pair| matches!(pair, [b'1'..=b'9', b'A'..=b'H']));
    if pairs && !class.is_empty() { rest } else { text }
}

/// A number with or without a fraction: `4.5`, `4 1/2`, `1-1/8`, `5/16`.
pub(super) fn mixed(text: &str) -> Option<f64> {
    let text = text.trim();
    match text.split_once(['-', ' ']) {
        Some((whole, part)) => Some(number(whole)? + fraction(part)?),
        None => fraction(text).or_else(|| number(text)),
    }
}

fn fraction(text: &str) -> Option<f64> {
    let (over, under) = text.split_once('/')?;
    let under = number(under).filter(|under| *under > 0.0)?;
    Some(number(over)? / under)
}

pub(super) fn number(text: &str) -> Option<f64> {
    let text = text.trim().trim_end_matches("MM").trim_end();
    let plain = text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    text.parse::<f64>().ok().filter(|value| plain && *value > 0.0)
}
