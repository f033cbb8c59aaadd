"""The hours over the dates, as large as there is room for."""

from __future__ import annotations

from textual.content import Content

from sewalong.progress.pace.course import Course
from sewalong.progress.pace.course_plot import Part, plotted
from sewalong.screens.widgets.literal_text import Words

LOW, HIGH = 8, 14
"""Lines of the plot on a small screen and on a large one."""

STYLES = {
    Part.MEASURED: "$good",
    Part.AHEAD: "$quiet",
    Part.WANTED: "bold $number",
    Part.WORDS: "$quiet",
}


class CourseView(Words):
    """Shows a course; it is drawn anew in another width."""

    def __init__(self, found: Course) -> None:
        super().__init__(classes="course")
        self._found = found
        self._width = 0

    def on_resize(self) -> None:
        if self.size.width in (0, self._width):
            return
        self._width = self.size.width
        high = HIGH if self.app.size.height > 40 else LOW
        rows = plotted(self._found, self._width, high)
        lines = [Content.assemble(*((run.text, STYLES[run.part]) for run in row)) for row in rows]
        self.say(Content("\n").join(lines))
