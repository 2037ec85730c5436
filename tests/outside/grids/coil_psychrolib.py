"""The heat that a coil takes out of the air, and the airflow that a heat needs, against PsychroLib's moist air."""

import coilside
import psychrolib
from gridding import Point, grid

SOURCE = "PsychroLib 2.5.0, enthalpy and humidity ratio of both states"
POINTS = 300

psychrolib.SetUnitSystem(psychrolib.SI)


def states(draw):
    """Air on and off the coil, the second cooler and damper, and the pressure."""
    pressure = draw.uniform(75_000, 104_000)
    on = draw.uniform(-5, 40), draw.uniform(0.2, 0.95)
    off = on[0] - draw.uniform(1, 12), min(1.0, on[1] + draw.uniform(0, 0.3))
    return on, off, pressure


def ratio(air, pressure):
    return psychrolib.GetHumRatioFromRelHum(*air, pressure)


def enthalpy(air, pressure):
    return psychrolib.GetMoistAirEnthalpy(air[0], ratio(air, pressure))


def volume(air, pressure):
    return psychrolib.GetMoistAirVolume(air[0], ratio(air, pressure), pressure)


def shown(on, off):
    return f"{on[0]:.2f} °C {on[1]:.3f} to {off[0]:.2f} °C {off[1]:.3f}"


def heats(draw):
    """Where, what the core gives, and the mass of dry air with both states."""
    for _ in range(POINTS):
        on, off, pressure = states(draw)
        airflow = draw.uniform(0.05, 1.5)
        ours = coilside.coil_heat(*on, *off, airflow, pressure)
        yield shown(on, off), ours, airflow / volume(on, pressure), on, off, pressure


@grid("heat of an air coil, total", bound=1e-3, unit="W", source=SOURCE)
def total(draw):
    for at, ours, mass, on, off, pressure in heats(draw):
        yield Point(at, ours.total_w, mass * (enthalpy(on, pressure) - enthalpy(off, pressure)))


@grid("heat of an air coil, sensible", bound=1e-3, unit="W", source=SOURCE)
def sensible(draw):
    for at, ours, mass, on, off, pressure in heats(draw):
        warm_but_dry = psychrolib.GetMoistAirEnthalpy(on[0], ratio(off, pressure))
        yield Point(at, ours.sensible_w, mass * (warm_but_dry - enthalpy(off, pressure)))


@grid("heat of an air coil, latent", bound=1e-3, unit="W", source=SOURCE)
def latent(draw):
    for at, ours, mass, on, off, pressure in heats(draw):
        warm_but_dry = psychrolib.GetMoistAirEnthalpy(on[0], ratio(off, pressure))
        yield Point(at, ours.latent_w, mass * (enthalpy(on, pressure) - warm_but_dry))


@grid("condensate of an air coil", bound=1e-6, unit="g/s", source=SOURCE)
def condensate(draw):
    for at, ours, mass, on, off, pressure in heats(draw):
        yield Point(at, ours.condensate_g_s, 1000 * mass * (ratio(on, pressure) - ratio(off, pressure)))


@grid("airflow from the heat balance", bound=1e-6, kind="rel", source=SOURCE)
def airflow(draw):
    for _ in range(POINTS):
        on, off, pressure = states(draw)
        # Where damp air warms less than it dries there is no heat to balance: such a pair is moved to equal humidity.
        if enthalpy(on, pressure) - enthalpy(off, pressure) < 500:
            off = off[0], on[1]
        heat, power, share = draw.uniform(1500, 8000), draw.uniform(300, 1200), draw.uniform(0.8, 1)

        def reading(value):
            return coilside.ReadingValue(value=value)

        ours = coilside.airflow_by_balance(
            coilside.CoilBalanceReadings(
                heat_w=reading(heat),
                power_w=reading(power),
                share_to_refrigerant=reading(share),
                air_on_c=reading(on[0]),
                air_on_rh=reading(on[1]),
                air_off_c=reading(off[0]),
                air_off_rh=reading(off[1]),
                pressure_pa=pressure,
            )
        )
        drop = enthalpy(on, pressure) - enthalpy(off, pressure)
        reference = (heat - share * power) * volume(on, pressure) / drop
        yield Point(shown(on, off), ours.value, reference)
