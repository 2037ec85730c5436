"""Moist air and the coil against PsychroLib, which follows the same chapter of the ASHRAE Handbook.

Equal equations: the bounds are tight and show slips of ours, not how well the equations fit real air (air_coolprop.py does).
PsychroLib halves its wet bulb to 0.001 K, and counts no humidity ratio below 1e-7, so air drier than that is not drawn.
Where the wet bulb is near 0 °C both equations, of a wet and of an iced bulb, may have a solution: either is right there.
"""

import coilside
import psychrolib as reference
from gridding import Point, grid

reference.SetUnitSystem(reference.SI)
SOURCE = "PsychroLib 2.5.0 SI (ASHRAE Handbook Fundamentals 2017, ch. 1)"
POINTS = 300
# Sea level, a town on a high plain, a pass, and whatever else lies in the range.
PRESSURES_PA = (101_325.0, 84_555.9, 70_108.5)
# Width of the region around 0 °C in which the two bulbs' equations both have a solution.
TWO_BULBS_K = 1.0


def humid_air(draw):
    """Points of moist air by humidity: dry bulb, humidity, pressure, and where that is."""
    for _ in range(POINTS):
        dry_c, humidity = draw.uniform(-50, 60), draw.uniform(0.01, 1)
        pressure_pa = draw.choice((*PRESSURES_PA, draw.uniform(50_000, 120_000)))
        yield dry_c, humidity, pressure_pa, f"{dry_c:.2f} °C, {humidity:.3f}, {pressure_pa:.0f} Pa"


def from_humidity(draw, attribute, theirs):
    for dry_c, humidity, pressure_pa, at in humid_air(draw):
        ours = coilside.air_from_humidity(dry_bulb_c=dry_c, humidity_rh=humidity, pressure_pa=pressure_pa)
        ratio = reference.GetHumRatioFromRelHum(dry_c, humidity, pressure_pa)
        yield Point(at, getattr(ours, attribute), theirs(dry_c, ratio, pressure_pa))


@grid("humidity ratio from humidity", bound=1e-10, unit="kg/kg", source=SOURCE)
def humidity_ratio(draw):
    return from_humidity(draw, "humidity_ratio_kg_kg", lambda _t, ratio, _p: ratio)


@grid("dew point from humidity", bound=1e-6, unit="K", source=SOURCE)
def dew_point(draw):
    return from_humidity(draw, "dew_point_c", reference.GetTDewPointFromHumRatio)


@grid("enthalpy from humidity", bound=1e-3, unit="J/kg", source=SOURCE)
def enthalpy(draw):
    return from_humidity(draw, "enthalpy_j_kg", lambda t, ratio, _p: reference.GetMoistAirEnthalpy(t, ratio))


@grid("volume from humidity", bound=1e-9, unit="m³/kg", source=SOURCE)
def volume(draw):
    return from_humidity(draw, "volume_m3_kg", reference.GetMoistAirVolume)


@grid("wet bulb from humidity, away from 0 °C", bound=0.001, unit="K", source=SOURCE)
def wet_bulb(draw):
    for point in from_humidity(draw, "wet_bulb_c", reference.GetTWetBulbFromHumRatio):
        if abs(point.reference) > TWO_BULBS_K:
            yield point


@grid("wet bulb from humidity, near 0 °C, put back", bound=1e-10, unit="kg/kg", source=SOURCE)
def wet_bulb_near_zero(draw):
    for _ in range(POINTS):
        pressure_pa, wet_c = draw.uniform(50_000, 120_000), draw.uniform(-TWO_BULBS_K, TWO_BULBS_K)
        dry_c = draw.uniform(max(wet_c, 0.0), 12)
        ratio = reference.GetHumRatioFromTWetBulb(dry_c, wet_c, pressure_pa)
        humidity = reference.GetRelHumFromHumRatio(dry_c, ratio, pressure_pa)
        if not 0.001 <= humidity <= 1:
            continue
        ours = coilside.air_from_humidity(dry_bulb_c=dry_c, humidity_rh=humidity, pressure_pa=pressure_pa)
        # Whichever bulb ours is, PsychroLib must find the same air from it.
        back = reference.GetHumRatioFromTWetBulb(dry_c, ours.wet_bulb_c, pressure_pa)
        yield Point(f"{dry_c:.2f} °C, {humidity:.3f}, {pressure_pa:.0f} Pa, wet {wet_c:.2f} °C", back, ratio)


def from_wet_bulb(draw, attribute, theirs):
    for dry_c, humidity, pressure_pa, at in humid_air(draw):
        # A wet bulb that can be: that of air of some humidity.
        wet_c = reference.GetTWetBulbFromRelHum(dry_c, humidity, pressure_pa)
        if abs(wet_c) < TWO_BULBS_K:
            continue
        ours = coilside.air_from_wet_bulb(dry_bulb_c=dry_c, wet_bulb_c=wet_c, pressure_pa=pressure_pa)
        yield Point(f"{at}, wet {wet_c:.2f} °C", getattr(ours, attribute), theirs(dry_c, wet_c, pressure_pa))


@grid("humidity ratio from wet bulb", bound=1e-10, unit="kg/kg", source=SOURCE)
def humidity_ratio_from_wet_bulb(draw):
    return from_wet_bulb(draw, "humidity_ratio_kg_kg", reference.GetHumRatioFromTWetBulb)


@grid("humidity from wet bulb", bound=1e-8, source=SOURCE)
def humidity_from_wet_bulb(draw):
    return from_wet_bulb(draw, "humidity_rh", reference.GetRelHumFromTWetBulb)


@grid("dew point from wet bulb", bound=1e-6, unit="K", source=SOURCE)
def dew_point_from_wet_bulb(draw):
    return from_wet_bulb(draw, "dew_point_c", reference.GetTDewPointFromTWetBulb)


@grid("enthalpy from wet bulb", bound=1e-3, unit="J/kg", source=SOURCE)
def enthalpy_from_wet_bulb(draw):
    def theirs(dry_c, wet_c, pressure_pa):
        return reference.GetMoistAirEnthalpy(dry_c, reference.GetHumRatioFromTWetBulb(dry_c, wet_c, pressure_pa))

    return from_wet_bulb(draw, "enthalpy_j_kg", theirs)


@grid("volume from wet bulb", bound=1e-9, unit="m³/kg", source=SOURCE)
def volume_from_wet_bulb(draw):
    def theirs(dry_c, wet_c, pressure_pa):
        ratio = reference.GetHumRatioFromTWetBulb(dry_c, wet_c, pressure_pa)
        return reference.GetMoistAirVolume(dry_c, ratio, pressure_pa)

    return from_wet_bulb(draw, "volume_m3_kg", theirs)


def coil(draw, attribute, theirs):
    for dry_c, humidity, pressure_pa, _ in humid_air(draw):
        off_c, off_rh, airflow_m3_s = draw.uniform(-50, 60), draw.uniform(0.01, 1), draw.uniform(0.05, 3)
        ours = coilside.coil_heat(
            air_on_c=dry_c,
            air_on_rh=humidity,
            air_off_c=off_c,
            air_off_rh=off_rh,
            airflow_m3_s=airflow_m3_s,
            pressure_pa=pressure_pa,
        )
        on = reference.GetHumRatioFromRelHum(dry_c, humidity, pressure_pa)
        off = reference.GetHumRatioFromRelHum(off_c, off_rh, pressure_pa)
        dry_air_kg_s = airflow_m3_s / reference.GetMoistAirVolume(dry_c, on, pressure_pa)
        at = f"{dry_c:.1f} °C {humidity:.2f} → {off_c:.1f} °C {off_rh:.2f}, {airflow_m3_s:.2f} m³/s, {pressure_pa:.0f} Pa"
        yield Point(at, getattr(ours, attribute), dry_air_kg_s * theirs(dry_c, on, off_c, off))


@grid("heat of a coil", bound=0.01, unit="W", source=SOURCE)
def coil_total(draw):
    def theirs(on_c, on, off_c, off):
        return reference.GetMoistAirEnthalpy(on_c, on) - reference.GetMoistAirEnthalpy(off_c, off)

    return coil(draw, "total_w", theirs)


@grid("latent heat of a coil", bound=0.01, unit="W", source=SOURCE)
def coil_latent(draw):
    def theirs(on_c, on, _off_c, off):
        return reference.GetMoistAirEnthalpy(on_c, on) - reference.GetMoistAirEnthalpy(on_c, off)

    return coil(draw, "latent_w", theirs)


@grid("condensate of a coil", bound=1e-6, unit="g/s", source=SOURCE)
def coil_condensate(draw):
    return coil(draw, "condensate_g_s", lambda _on_c, on, _off_c, off: (on - off) * 1000)
