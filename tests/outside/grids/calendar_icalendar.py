"""Counting months against recurrence rules of RFC 5545, and against relativedelta; compared as days of the calendar."""

import datetime

import coilside
from dateutil.relativedelta import relativedelta
from dateutil.rrule import rrulestr
from gridding import Point, grid
from icalendar import Event

POINTS = 300


def day(draw, first_year, last_year):
    """Any day, and as often one near a month's end, where months differ."""
    first = datetime.date(first_year, 1, 1).toordinal()
    last = datetime.date(last_year, 12, 31).toordinal()
    date = datetime.date.fromordinal(draw.randint(first, last))
    if draw.random() < 0.5:
        end = date.replace(day=1) + relativedelta(months=1) - datetime.timedelta(days=1)
        date = end - datetime.timedelta(days=draw.choice((0, 0, 1, 2)))
    return date


def ours(date, months):
    moved = coilside.add_months(date=date.isoformat(), months=months)
    return datetime.date.fromisoformat(moved).toordinal()


def by_rule(date, months):
    """The last day of the month that is not after the date's day, by an event that recurs monthly."""
    days = list(range(min(date.day, 28), date.day + 1))
    event = Event()
    event.start = date
    event.add("rrule", {"FREQ": "MONTHLY", "BYMONTHDAY": days, "BYSETPOS": -1, "COUNT": months + 1})
    read = Event.from_ical(event.to_ical())
    starts = datetime.datetime.combine(read.start, datetime.time())
    *_, last = rrulestr(read["RRULE"].to_ical().decode(), dtstart=starts)
    return last.toordinal()


@grid(
    "months counted by a recurrence rule",
    bound=0,
    unit="days",
    source="icalendar 7.3.2 (RFC 5545 RRULE), read by python-dateutil 4.0.0",
)
def recurrence(draw):
    for _ in range(POINTS):
        date, months = day(draw, 1900, 2180), draw.randint(0, 240)
        yield Point(f"{date} and {months} months", ours(date, months), by_rule(date, months))


@grid("months counted on and back", bound=0, unit="days", source="python-dateutil 4.0.0 relativedelta")
def relative(draw):
    for _ in range(POINTS):
        date, months = day(draw, 2000, 2100), draw.randint(-1200, 1200)
        yield Point(f"{date} and {months} months", ours(date, months), (date + relativedelta(months=months)).toordinal())


@grid("the last day of grace after so many months", bound=0, unit="days", source="icalendar 7.3.2: a day's event with DURATION, read back from .ics")
def grace(draw):
    for _ in range(POINTS):
        date, months, days = day(draw, 1950, 2150), draw.randint(1, 60), draw.randint(0, 400)
        due = coilside.add_months(date=date.isoformat(), months=months)
        ours_end = datetime.date.fromisoformat(coilside.add_days(date=due, days=days)).toordinal()
        event = Event()
        event.start = date + relativedelta(months=months)
        event.DURATION = datetime.timedelta(days=days + 1)
        read = Event.from_ical(event.to_ical())
        # The end of an event of whole days is the first day that is not in it (RFC 5545, 3.6.1).
        yield Point(f"{date}, {months} months, {days} days", ours_end, (read.end - datetime.timedelta(days=1)).toordinal())


@grid("days from one date to another", bound=0, unit="days", source="Python's datetime")
def between(draw):
    for _ in range(POINTS):
        one, two = day(draw, 1900, 2200), day(draw, 1900, 2200)
        yield Point(f"{one} to {two}", coilside.days_between(date=one.isoformat(), until_date=two.isoformat()), (two - one).days)
