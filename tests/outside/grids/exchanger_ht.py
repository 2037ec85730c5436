"""A counterflow exchanger against the `ht` package."""

import coilside
import ht
from gridding import Point, grid

SOURCE = "ht 1.2.0"
POINTS = 300


def ends(draw):
    """Temperatures at the four ends, at least half a kelvin apart."""
    cold_in = draw.uniform(0, 60)
    hot_out = cold_in + draw.uniform(0.5, 30)
    hot_in = hot_out + draw.uniform(0, 60)
    cold_out = draw.uniform(cold_in, hot_in - 0.5)
    return hot_in, hot_out, cold_in, cold_out


def shown(temperatures):
    return " / ".join(f"{one:.2f}" for one in temperatures) + " °C"


@grid("logarithmic mean temperature difference", bound=1e-9, kind="rel", source=f"{SOURCE}, LMTD")
def lmtd(draw):
    for _ in range(POINTS):
        at = ends(draw)
        yield Point(shown(at), coilside.lmtd_k(*at), ht.LMTD(*at))


@grid("conductance of an exchanger", bound=1e-9, kind="rel", source=f"{SOURCE}, heat over LMTD")
def ua(draw):
    for _ in range(POINTS):
        at, heat_w = ends(draw), draw.uniform(500, 50_000)
        yield Point(f"{heat_w:.0f} W, {shown(at)}", coilside.ua_w_k(heat_w, *at), heat_w / ht.LMTD(*at))


@grid("effectiveness", bound=1e-9, source=f"{SOURCE}, effectiveness_from_NTU, counterflow")
def effectiveness(draw):
    for index in range(POINTS):
        ntu = draw.uniform(0.01, 8)
        # Equal and one-sided capacities have formulas of their own.
        ratio = {0: 0.0, 1: 1.0}.get(index % 10, draw.uniform(0, 1))
        reference = ht.effectiveness_from_NTU(NTU=ntu, Cr=ratio, subtype="counterflow")
        yield Point(f"NTU {ntu:.3f}, C {ratio:.3f}", coilside.effectiveness(ntu, ratio), reference)


@grid("fouling resistance", bound=1e-9, kind="rel", source=f"{SOURCE}, LMTD now and clean, the definition")
def fouling(draw):
    for _ in range(POINTS):
        at, heat_w, area_m2 = ends(draw), draw.uniform(500, 50_000), draw.uniform(0.05, 5)
        lmtd = ht.LMTD(*at)
        clean_w_k = heat_w / lmtd * draw.uniform(1.02, 2)
        ours = coilside.fouling_resistance_m2_k_w(area_m2, heat_w / lmtd, clean_w_k)
        yield Point(f"{area_m2:.2f} m², {shown(at)}", ours, area_m2 * (lmtd / heat_w - 1 / clean_w_k))
