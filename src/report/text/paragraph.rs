use super::table::Table;
use crate::plan::Sentence;
use crate::quantity::System;
use crate::report::words;
use textwrap::{Options, WordSplitter};

const INDENT: &str = "  ";

/// Text that grows line by line.
pub(crate) struct Page {
    text: String,
    columns: usize,
}

impl Page {
    /// An empty page whose prose has no wider line than this many columns; a table is as wide as it is.
    pub(crate) fn new(columns: usize) -> Self {
        Self { text: String::new(), columns }
    }

    /// A line as it is.
    pub(crate) fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// A heading after an empty line.
    pub(crate) fn heading(&mut self, heading: &str) {
        if !self.text.is_empty() {
            self.line("");
        }
        self.flush(heading);
    }

    /// A wrapped line of prose that begins at the margin.
    pub(crate) fn flush(&mut self, text: &str) {
        self.wrapped(text, "", INDENT);
    }

    /// A wrapped paragraph whose later lines stand a little further in.
    pub(crate) fn paragraph(&mut self, text: &str) {
        self.wrapped(text, INDENT, "      ");
    }

    /// A wrapped paragraph that begins with `opening`.
    pub(crate) fn hanging(&mut self, opening: &str, text: &str) {
        self.wrapped(&format!("{opening}{text}"), INDENT, "      ");
    }

    /// Numbered steps under a heading; nothing where there are none.
    pub(super) fn steps(&mut self, heading: &str, steps: &[Sentence], system: System) {
        if steps.is_empty() {
            return;
        }
        self.heading(heading);
        for (number, step) in steps.iter().enumerate() {
            self.hanging(&format!("{}. ", number + 1), &words::sentence(step, system));
        }
    }

    /// A wrapped remark under the paragraph before it.
    pub(crate) fn small(&mut self, text: &str) {
        self.wrapped(text, "      ", "      ");
    }

    fn wrapped(&mut self, text: &str, first: &str, later: &str) {
        let options = Options::new(self.columns).initial_indent(first).subsequent_indent(later).break_words(false);
        // Ids and keys are typed as they stand, so that a hyphen is no place to break.
        let options = options.word_splitter(WordSplitter::NoHyphenation);
        for line in textwrap::wrap(text, options) {
            self.line(&line);
        }
    }

    /// A table, indented.
    pub(crate) fn table<const N: usize>(&mut self, table: &Table<N>) {
        for line in table.lines() {
            self.line(&format!("{INDENT}{line}"));
        }
    }

    pub(crate) fn finish(self) -> String {
        self.text
    }
}
