"""`leadsman ask` on a terminal: a conversation with editing, history and completion, and a few commands."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from prompt_toolkit import PromptSession
from prompt_toolkit.auto_suggest import AutoSuggestFromHistory
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, History, InMemoryHistory

from grammar.facts import facts
from grammar.files import TABLES, toml
from service import reference, say
from service.commands.typed import named, typed
from service.house.kept import Kept
from service.leadsman import Leadsman
from service.question import BadInput
from service.render.as_screen import Screen, as_screen
from service.render.as_text import wrapped
from service.reply import Reply
from service.turns.thread import Thread, packed

HISTORY = "history"  # in the data folder
SHORTEST = 2  # letters from which a word is completed
GREETING = "Ask about a battery, a charger, a cable or a fuse. `help` shows the commands, `quit` ends."
HELP = {
    "facts": "what is known of this conversation so far",
    "set FACT VALUE": "set or correct a fact and answer again: set battery.cca 650",
    "why": "how the last message was understood, step by step",
    "sources": "the sources of the last answer in full",
    "new": "begin a new conversation",
    "quit": "end (so does Ctrl+D)",
}
NOTHING = "Nothing has been asked yet."

Store = Callable[[str, Reply, float], None]  # text, reply, milliseconds


class Talk:
    """One conversation at a terminal, without the terminal: a line in, a text out. The desk needs a signer."""

    def __init__(self, desk: Leadsman, screen: Screen | None = None, store: Store | None = None) -> None:
        self.desk, self.screen, self.store = desk, screen or Screen(), store
        self.token = ""
        self.last: Reply | None = None

    @property
    def thread(self) -> Thread:
        """The conversation so far."""
        signer = self.desk.signer
        return (signer.thread(self.token) if signer and self.token else None) or Thread()

    def answer(self, line: str) -> str | None:
        """What the desk says to a line; None where it ends the conversation."""
        word, _, rest = line.strip().partition(" ")
        if line.strip().lower() in ("quit", "exit"):
            return None
        command = self._command(word.lower(), rest.strip())
        try:
            return "\n".join(command) if command is not None else self._asked(line)
        except BadInput as error:
            return "\n".join(wrapped(str(error), self.screen.width))

    def _command(self, word: str, rest: str) -> Iterator[str] | None:
        if word == "set" and rest.partition(" ")[0].lower() in _names():  # "set for AGM, is that right" is a question
            return self._set(*rest.split(None, 1))
        alone = {"facts": self._facts, "why": self._why, "sources": self._sources, "new": self._new, "help": self._help}
        return alone[word]() if word in alone and not rest else None

    def _asked(self, text: str, told: str = "", given: Iterable[dict[str, object]] = ()) -> str:
        import time

        start = time.perf_counter()
        reply = self.desk.ask(text, self.token or None, list(given))
        spent = (time.perf_counter() - start) * 1000
        self.token, self.last = reply.thread, reply
        if self.store:
            self.store(text or told, reply, spent)
        return as_screen(reply, self.screen)

    def _facts(self) -> Iterator[str]:
        known = [*self.thread.facts.values(), *self.thread.second.values()]
        for item in known:
            which = " (the second)" if item.of > 1 else ""
            yield f"{item.fact:28} {say.fact(item.fact, item.value).replace(say.NB, ' ')}{which}"
        if not known:
            yield "No facts so far."

    def _set(self, name: str, text: str = "") -> Iterator[str]:
        if not text:
            raise BadInput(f"Write the value as well: set {name} ...")
        item = typed(name, text)
        fact, value, unit, *_ = packed(item)
        shown = f"{fact} = {say.fact(fact, value)}".replace(say.NB, " ")
        if not self.thread.topics:
            # nothing to answer again: the fact waits in the thread for the first question
            assert self.desk.signer, "a conversation needs a signer"
            self.token = self.desk.signer.token(self.thread.told([item]))
            yield shown
            return
        yield self._asked("", shown, [{"fact": fact, "value": value, "unit": unit}])

    def _why(self) -> Iterator[str]:
        yield from self.last.why if self.last else [NOTHING]

    def _sources(self) -> Iterator[str]:
        if self.last is None:
            yield NOTHING
            return
        cites = {item.id: item for answer in self.last.answers for item in answer.cites}
        for item in cites.values():
            told = f"{item.title}, {item.publisher}, {item.edition}, {item.locator} ({item.kind.replace('-', ' ')})"
            yield "\n".join(wrapped(told, self.screen.width))
        if not cites:
            yield "The last answer has no source."

    def _new(self) -> Iterator[str]:
        self.token, self.last = "", None
        yield "A new conversation."

    def _help(self) -> Iterator[str]:
        yield from (f"{name:16} {told}" for name, told in HELP.items())


def _names() -> set[str]:
    """Every way to name a fact in one word."""
    found = set(facts()) | {name.partition(".")[2] for name in facts()}
    return {name for name in found if _is_fact(name)}


def _is_fact(name: str) -> bool:
    try:
        return bool(named(name))
    except BadInput:
        return False


class TradeWords(Completer):
    """Completes commands at the start of a line, facts after `set`, and trade words and models anywhere."""

    def __init__(self, models: Iterable[str]) -> None:
        self.words = sorted({*trade_words(), *models}, key=lambda word: (len(word), word))
        self.commands = [name.split()[0] for name in HELP]

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterator[Completion]:
        """The words that the one before the cursor may become, the shortest first."""
        before = document.text_before_cursor
        word = before.rsplit(" ", 1)[-1]
        if len(word) < SHORTEST:
            return
        first = " " not in before.strip()
        known = facts() if before.startswith("set ") and before.count(" ") == 1 else self.words
        for other in (*(self.commands if first else ()), *known):
            if other.lower().startswith(word.lower()) and other.lower() != word.lower():
                yield Completion(other, start_position=-len(word))


def trade_words() -> set[str]:
    """The words of the trade, rightly spelt: those of the lexicon that slips are mended to, kinds, values, terms."""
    words = set(toml(TABLES / "spelling.toml")["repair"]) | set(say.CHEMISTRY.values())
    words |= {value for spec in facts().values() for value in spec.values}
    terms = (str(row["name"].value).partition(" (")[0] for row in reference.rows("meanings"))
    words |= {term if term.isupper() else term.lower() for term in terms if " " not in term}
    return words - {word.lower() for word in words if word.lower() != word}  # AGM, not agm


def history(folder: Path | None) -> History:
    """The lines of earlier conversations, in a file of the data folder that only its owner may read."""
    if folder is None:
        return InMemoryHistory()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        file = folder / HISTORY
        file.touch(mode=0o600)
    except OSError:  # no place for it: the conversation goes on without
        return InMemoryHistory()
    return FileHistory(str(file))


def taken_up(conversation: Talk, house: Kept) -> str:
    """Put the house in force as its file stands; what is wrong with that file, where that is new."""
    before = house.fault
    conversation.desk.house = house.now()
    new = house.fault and house.fault != before
    return f"The house file is not taken up, the last sound one stays: {house.fault}" if new else ""


def talk(
    conversation: Talk, folder: Path | None, show: Callable[[str], None] = print, house: Kept | None = None
) -> None:
    """Talk until the user ends it. `folder`: where the history is kept; `house`: taken up anew when it changes."""
    models = (model.name for model in conversation.desk.house.models.values())
    session: PromptSession[str] = PromptSession(
        "> ",
        history=history(folder),
        completer=TradeWords(models),
        complete_while_typing=False,
        auto_suggest=AutoSuggestFromHistory() if conversation.screen.colour else None,
    )
    show("\n".join(wrapped(GREETING, conversation.screen.width)))
    while True:
        try:
            line = session.prompt()
        except KeyboardInterrupt:  # the line is dropped, as shells do
            continue
        except EOFError:
            return
        if not line.strip():
            continue
        if house is not None and (fault := taken_up(conversation, house)):
            show("\n".join(wrapped(fault, conversation.screen.width)))
        said = conversation.answer(line)
        if said is None:
            return
        show(f"\n{said}\n")
