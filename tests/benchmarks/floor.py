"""The least that Textual can do: one line of text that a key changes."""

from textual.app import App
from textual.widgets import Static


class Floor(App):
    """Counts presses."""

    presses = 0

    def compose(self):
        yield Static("0 presses", id="count")

    def on_key(self, event):
        if event.key == "q":
            self.exit()
            return
        self.presses += 1
        self.query_one("#count", Static).update(f"{self.presses} presses")


if __name__ == "__main__":
    Floor().run()
