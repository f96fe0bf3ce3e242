use super::{LEGEND, Page, page};
use crate::plan::chart::Chart;
use crate::report::Layout;
use crate::report::text::Page as Text;
use unicode_width::UnicodeWidthStr;

/// Charts as text, one under the other.
pub fn text(charts: &[Chart], layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut text = Text::new(columns);
    for chart in charts {
        of_one(&page(chart, system), &mut text);
    }
    text.finish()
}

fn of_one(page: &Page, text: &mut Text) {
    text.heading(&page.title);
    text.paragraph(&page.subtitle);
    text.line("");
    let head = std::iter::once(page.corner.clone()).chain(page.columns.iter().cloned()).collect();
    let rows = page.rows.iter().map(|(outer, cells)| {
        let cells = cells.iter().map(|cell| format!("{} {}", cell.kind, cell.lines.join(", ")));
        std::iter::once(outer.clone()).chain(cells).collect()
    });
    for line in aligned(&std::iter::once(head).chain(rows).collect::<Vec<_>>()) {
        text.line(&format!("  {line}"));
    }
    text.line("");
    for line in LEGEND {
        text.paragraph(line);
    }
    if !page.reasons.is_empty() {
        text.heading("Why not");
        for reason in &page.reasons {
            text.paragraph(reason);
        }
    }
    text.heading("Cautions");
    for (level, caution) in &page.cautions {
        text.hanging(&format!("{}: ", level.to_uppercase()), caution);
    }
}

/// Rows in columns, each as wide as its widest cell.
pub(crate) fn aligned(rows: &[Vec<String>]) -> Vec<String> {
    let count = rows.iter().map(Vec::len).max().unwrap_or(0);
    let width =
        |column: usize| rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.width()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..count).map(width).collect();
    let line = |row: &Vec<String>| {
        let cells =
            row.iter().zip(&widths).map(|(cell, width)| format!("{cell}{}   ", " ".repeat(width - cell.width())));
        cells.collect::<String>().trim_end().to_owned()
    };
    rows.iter().map(line).collect()
}
