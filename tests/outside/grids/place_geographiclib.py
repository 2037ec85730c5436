"""Distances on the ellipsoid against geographiclib."""

import coilside
from geographiclib.geodesic import Geodesic
from gridding import Point, grid

SOURCE = "geographiclib 2.1, Geodesic.WGS84.Inverse"
POINTS = 300
# geographiclib states 15 nanometres for itself; a receiver is some metres off.
BOUND_M = 1e-6


def compared(lat1, lon1, lat2, lon2):
    ours = coilside.distance_m(lat1=lat1, lon1=lon1, lat2=lat2, lon2=lon2)
    reference = Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2, Geodesic.DISTANCE)["s12"]
    return Point(f"{lat1:.9g} {lon1:.9g} to {lat2:.9g} {lon2:.9g}", ours, reference)


def place(draw):
    return draw.uniform(-90, 90), draw.uniform(-180, 180)


def nearby(draw, latitude, longitude, least_exponent, most_exponent):
    """A place off by some power of ten of a degree at most."""
    span = 10 ** draw.uniform(least_exponent, most_exponent)
    north, east = draw.uniform(-span, span), draw.uniform(-span, span)
    return max(-90.0, min(90.0, latitude + north)), (longitude + east + 180) % 360 - 180


@grid("distance of any two places", bound=BOUND_M, unit="m", source=SOURCE)
def anywhere(draw):
    for _ in range(POINTS):
        yield compared(*place(draw), *place(draw))


@grid("distance of two places close by", bound=BOUND_M, unit="m", source=SOURCE)
def close_by(draw):
    for _ in range(POINTS):
        here = place(draw)
        yield compared(*here, *nearby(draw, *here, -12, -1))


@grid("distance of places nearly opposite", bound=BOUND_M, unit="m", source=SOURCE)
def nearly_opposite(draw):
    for _ in range(POINTS):
        latitude, longitude = place(draw)
        yield compared(latitude, longitude, *nearby(draw, -latitude, longitude + 180, -12, 0.3))


@grid("distance of places nearly opposite at the equator", bound=BOUND_M, unit="m", source=SOURCE)
def nearly_opposite_at_the_equator(draw):
    for _ in range(POINTS):
        longitude = draw.uniform(-180, 180)
        one = nearby(draw, 0, longitude, -12, 0)
        yield compared(*one, *nearby(draw, 0, longitude + 180, -12, 0))


@grid("distance at and near the poles", bound=BOUND_M, unit="m", source=SOURCE)
def poles(draw):
    def near_pole():
        latitude = draw.choice((90, -90)) * (1 - draw.choice((0, 10 ** draw.uniform(-14, -1))))
        return latitude, draw.uniform(-180, 180)

    for _ in range(POINTS):
        yield compared(*near_pole(), *near_pole())


@grid("distance along a meridian or the equator", bound=BOUND_M, unit="m", source=SOURCE)
def along(draw):
    for _ in range(POINTS // 2):
        latitude, longitude = place(draw)
        yield compared(latitude, longitude, draw.uniform(-90, 90), longitude)
        yield compared(0, longitude, 0, draw.uniform(-180, 180))
