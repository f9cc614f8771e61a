"""padspec explain: what a check measures and why, what a layout is for, or what a key of a file means."""

import inspect
from textwrap import fill

import click

from padspec.base.nearest import did_you_mean
from padspec.checks.check import Check, limits_for
from padspec.checks.table import CHECKS
from padspec.cli.options import CONTEXT
from padspec.reading.describe import describe, headwords, known_words
from padspec.reading.describe_layout import describe_layout, layout_summaries
from padspec.resources import layout_names, schema_folder

EPILOG = """\b
Examples:
  padspec explain                  everything that can be explained
  padspec explain rule-contrast    a check
  padspec explain rows.pitch       a key of a design
  padspec explain week             a layout
"""


@click.command("explain", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("word", required=False)
def command(word: str | None) -> int:
    """Say what a check, a layout or a key means, with its limits, default and examples."""
    if word is None:
        click.echo("Checks:\n  " + "\n  ".join(check.name for check in CHECKS))
        click.echo(
            "\nLayouts:\n"
            + "\n".join(fill(f"  {s.name}: {s.about}", 88, subsequent_indent="    ") for s in layout_summaries())
        )
        click.echo("\nKeys, each with the keys inside it:\n" + "\n".join(_key_lines()))
        click.echo(f"\nThe schemas, for an editor that completes and explains keys: {schema_folder()}")
        return 0
    check = next((check for check in CHECKS if check.name == word), None)
    text = _check_text(check) if check else describe_layout(word) or describe(word)
    if text is None:
        mend = did_you_mean(word, [*(check.name for check in CHECKS), *layout_names(), *known_words()])
        click.echo(
            f"Nothing here is called {word}. {mend if mend.startswith('Did') else 'See: padspec explain'}",
            err=True,
        )
        return 2
    click.echo(text)
    return 0


def _key_lines() -> list[str]:
    """The keys at the top of a file, a line each, with those inside them."""
    inside: dict[str, list[str]] = {}
    for word in headwords():
        first, _, rest = word.partition(".")
        inside.setdefault(first, []).extend([rest] if rest else [])
    return [
        fill(
            f"{first}: {', '.join(rest)}" if rest else first,
            88,
            initial_indent="  ",
            subsequent_indent="    ",
            break_on_hyphens=False,
        )
        for first, rest in inside.items()
    ]


def _check_text(check: Check) -> str:
    limits = limits_for(check, ()).levels
    shown = ", ".join(f"{level.severity.word} {level.text}" for level in limits)
    lines = [
        f"{check.name}: a check",
        "",
        inspect.cleandoc(check.run.__doc__ or ""),
        "",
        f"Limits: {shown}. Change them in a design with limits: {{{check.name}: …}}."
        if shown
        else "It has no limit to set.",
        "A finding may be accepted with allow: {" + check.name + ": the reason}."
        if check.may_be_allowed
        else "It cannot be allowed.",
    ]
    return "\n".join(lines)
