"""What a shell may offer behind each command, and the scripts that tell it so."""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Mapping

from benchround.core.frozen import dataclass
from benchround.core.record_figures import KINDS
from benchround.crops.library import load_library
from benchround.shell.parsers import Argument, arguments_of, module_of, parser_of, subjects_of

SHELLS = ("bash", "zsh", "fish")
PROGRAM = "benchround"


@dataclass(frozen=True, slots=True)
class Offer:
    """What is offered behind a command.

    Attributes:
        words: words that are no options: crops, kinds of records, subjects, choices.
        options: its options, those of its subjects included.
    """

    command: str
    summary: str
    words: tuple[str, ...]
    options: tuple[Argument, ...]
    folders: bool
    files: bool


def offers(commands: tuple[str, ...]) -> tuple[Offer, ...]:
    """What is offered behind each command."""
    known: Mapping[str, tuple[str, ...]] = {
        "crop": tuple(load_library()),
        "kind": tuple(str(kind).replace(" ", "-") for kind in KINDS),
        "command": commands,
    }
    return tuple(_offer(command, known) for command in commands)


def _offer(command: str, known: Mapping[str, tuple[str, ...]]) -> Offer:
    module = module_of(command)
    parser = parser_of(command, module)
    subjects = subjects_of(parser)
    found = [one for each in (parser, *subjects.values()) for one in arguments_of(each)]
    plain = [one for one in found if not one.option]
    words = [word for one in plain for word in one.choices or known.get(one.dest, ())]
    options = {one.name.partition(" ")[0]: one for one in found if one.option}
    return Offer(
        command=command,
        summary=module.HELP,
        words=tuple(dict.fromkeys([*subjects, *words])),
        options=tuple(options.values()),
        folders=any(one.of_folders for one in plain),
        files=any(one.of_files for one in plain),
    )


def script_for(shell: str, commands: tuple[str, ...]) -> str:
    """The script for a shell; `SHELLS` names those there are."""
    write = {"bash": _bash, "zsh": _zsh, "fish": _fish}[shell]
    return "".join(f"{line}\n" for line in write(offers(commands)))


def option_word(argument: Argument) -> str:
    """The option itself, without what follows it."""
    return argument.name.partition(" ")[0]


def _after(found: tuple[Offer, ...]) -> tuple[str, str]:
    """The options a folder follows and those a file follows, parted by bars."""
    options = [one for offer in found for one in offer.options if one.takes]
    folders = dict.fromkeys(option_word(one) for one in options if one.of_folders)
    files = dict.fromkeys(option_word(one) for one in options if one.of_files)
    return "|".join(folders), "|".join(files)


def _bash(found: tuple[Offer, ...]) -> Iterator[str]:
    folders, files = _after(found)
    commands = shlex.quote(" ".join(offer.command for offer in found))
    yield f'# Completion of {PROGRAM} for bash: eval "$({PROGRAM} completion bash)"'
    yield f"_{PROGRAM}() {{"
    yield '    local now="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}"'
    yield '    local words="" paths=""'
    yield "    COMPREPLY=()"
    yield '    if [ "$COMP_CWORD" -eq 1 ]; then'
    yield f"        words={commands}' --sample --version --help' paths=-d"
    yield "    else"
    yield '        case "$before" in'
    if folders:
        yield f'            {folders}) COMPREPLY=($(compgen -d -- "$now")); return ;;'
    if files:
        yield f'            {files}) COMPREPLY=($(compgen -f -- "$now")); return ;;'
    for offer in found:
        for one in offer.options:
            if one.choices and one.takes:
                choices = shlex.quote(" ".join(one.choices))
                yield (
                    f"            {option_word(one)}) "
                    f'COMPREPLY=($(compgen -W {choices} -- "$now")); return ;;'
                )
    yield "        esac"
    yield '        case "${COMP_WORDS[1]}" in'
    for offer in found:
        words = shlex.quote(" ".join([*offer.words, *map(option_word, offer.options)]))
        path = " paths=-f" if offer.files else " paths=-d" if offer.folders else ""
        yield f"            {offer.command}) words={words}{path} ;;"
    yield "        esac"
    yield "    fi"
    yield '    COMPREPLY=($(compgen -W "$words" -- "$now"))'
    yield '    [ -n "$paths" ] && COMPREPLY+=($(compgen "$paths" -- "$now"))'
    yield "    return 0"
    yield "}"
    yield f"complete -o filenames -F _{PROGRAM} {PROGRAM}"


def _zsh(found: tuple[Offer, ...]) -> Iterator[str]:
    folders, files = _after(found)
    yield f"#compdef {PROGRAM}"
    yield f"_{PROGRAM}() {{"
    yield "    local -a commands"
    yield "    if (( CURRENT == 2 )); then"
    yield "        commands=("
    for offer in found:
        summary = offer.summary.replace(":", "\\:")
        yield f"            {_quoted(f'{offer.command}:{summary}')}"
    yield "        )"
    yield "        _describe command commands"
    yield "        _files -/"
    yield "        return"
    yield "    fi"
    yield "    case $words[CURRENT-1] in"
    if folders:
        yield f"        ({folders}) _files -/; return ;;"
    if files:
        yield f"        ({files}) _files; return ;;"
    yield "    esac"
    yield '    case "$words[2] $words[CURRENT-1]" in'
    for offer in found:
        for one in offer.options:
            if one.choices and one.takes:
                after = _quoted(f"{offer.command} {option_word(one)}")
                choices = " ".join(map(_quoted, one.choices))
                yield f"        {after}) compadd -- {choices}; return ;;"
    yield "    esac"
    yield "    case $words[2] in"
    for offer in found:
        words = " ".join(map(_quoted, (*offer.words, *map(option_word, offer.options))))
        path = "; _files" if offer.files else "; _files -/" if offer.folders else ""
        yield f"        ({offer.command}) compadd -- {words}{path} ;;"
    yield "    esac"
    yield "}"
    yield f'if [ "$funcstack[1]" = "_{PROGRAM}" ]; then _{PROGRAM} "$@"'
    yield f"else compdef _{PROGRAM} {PROGRAM}; fi"


def _fish(found: tuple[Offer, ...]) -> Iterator[str]:
    yield f"# Completion of {PROGRAM} for fish: {PROGRAM} completion fish | source"
    start = f"complete -c {PROGRAM}"
    for offer in found:
        alone = "__fish_use_subcommand"
        yield f"{start} -n {alone} -a {_quoted(offer.command)} -d {_quoted(offer.summary)}"
    for offer in found:
        inside = f"-n {_quoted(f'__fish_seen_subcommand_from {offer.command}')}"
        if offer.words:
            files = "" if offer.files or offer.folders else " -f"
            yield f"{start} {inside}{files} -a {_quoted(' '.join(offer.words))}"
        for one in offer.options:
            word = option_word(one)
            name = f"-l {word[2:]}" if word.startswith("--") else f"-s {word[1:]}"
            after = " -r" if one.takes else ""
            if one.takes and one.choices:
                after = f" -x -a {_quoted(' '.join(one.choices))}"
            yield f"{start} {inside} {name}{after} -d {_quoted(one.help)}"


def _quoted(text: str) -> str:
    """A word in single quotes, as bash, zsh and fish all read it."""
    return "'" + text.replace("'", "'\"'\"'") + "'"
