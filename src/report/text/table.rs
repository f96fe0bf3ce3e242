use unicode_width::UnicodeWidthStr;

/// Rows in columns: the first column to the left, the others to the left as well, each as wide as its widest cell.
pub(crate) struct Table<const N: usize> {
    pub(crate) head: Option<[String; N]>,
    pub(crate) rows: Vec<[String; N]>,
}

/// Space between columns.
const GAP: usize = 3;

impl<const N: usize> Table<N> {
    pub(crate) fn lines(&self) -> Vec<String> {
        let all: Vec<&[String; N]> = self.head.iter().chain(&self.rows).collect();
        let widths: [usize; N] =
            std::array::from_fn(|column| all.iter().map(|row| row[column].width()).max().unwrap_or(0));
        all.iter().map(|row| line(row, &widths)).collect()
    }
}

fn line<const N: usize>(row: &[String; N], widths: &[usize; N]) -> String {
    let mut text = String::new();
    for (cell, width) in row.iter().zip(widths) {
        text.push_str(cell);
        text.push_str(&" ".repeat(width - cell.width() + GAP));
    }
    text.trim_end().to_owned()
}
