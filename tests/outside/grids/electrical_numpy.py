"""Electrical formulas against the physics they follow from: waves sampled over a period, and phasors, with numpy."""

import coilside
import numpy
from gridding import Point, grid

POINTS = 250
# A whole number of samples in a period: means over it are exact for sine waves.
TURN = numpy.arange(720) * (2 * numpy.pi / 720)
WAVES = "instantaneous voltage times current, averaged over a period of 720 samples, numpy 2.4.6"


def root_mean_square(wave):
    return float(numpy.sqrt(numpy.mean(wave**2)))


@grid("power factor", bound=1e-9, kind="rel", source=WAVES)
def power_factor(draw):
    for _ in range(POINTS):
        volts, amperes, lag = draw.uniform(10, 1000), draw.uniform(0.01, 1000), draw.uniform(-1.5, 1.5)
        # A third harmonic in the current: the factor is not the cosine alone.
        third = draw.uniform(0, 0.4)
        voltage = volts * numpy.sqrt(2) * numpy.sin(TURN)
        current = amperes * numpy.sqrt(2) * (numpy.sin(TURN - lag) + third * numpy.sin(3 * TURN))
        real_w = float(numpy.mean(voltage * current))
        current_a = root_mean_square(current)
        if current_a > 1000:
            continue
        ours = coilside.power_factor(real_w=real_w, voltage_v=root_mean_square(voltage), current_a=current_a)
        reference = float(numpy.cos(lag)) / float(numpy.sqrt(1 + third**2))
        yield Point(f"{volts:.0f} V, {amperes:.2f} A, {lag:.2f} rad, {third:.2f} third harmonic", ours, reference)


@grid("three-phase power", bound=1e-9, kind="rel", source=WAVES + "; three wires of a balanced load, each against the star point")
def three_phase_power(draw):
    for _ in range(POINTS):
        star_v, amperes, lag = draw.uniform(6, 570), draw.uniform(0.01, 1000), draw.uniform(0, 1.5)
        thirds = [TURN - wire * 2 * numpy.pi / 3 for wire in range(3)]
        voltages = [star_v * numpy.sqrt(2) * numpy.sin(turn) for turn in thirds]
        currents = [amperes * numpy.sqrt(2) * numpy.sin(turn - lag) for turn in thirds]
        reference = float(numpy.mean(sum(v * i for v, i in zip(voltages, currents, strict=True))))
        ours = coilside.three_phase_power_w(
            line_voltage_v=root_mean_square(voltages[0] - voltages[1]),
            current_a=amperes,
            power_factor=float(numpy.cos(lag)),
        )
        yield Point(f"{star_v:.0f} V to star, {amperes:.2f} A, {lag:.2f} rad", ours, reference)


@grid("a capacitor from its current", bound=1e-9, kind="rel", source="complex impedance 1/(jωC), numpy 2.4.6")
def capacitance(draw):
    for _ in range(POINTS):
        microfarad, volts, hertz = draw.uniform(0.5, 200), draw.uniform(10, 1000), draw.choice((50, 60, draw.uniform(10, 400)))
        impedance = 1 / (1j * 2 * numpy.pi * hertz * microfarad * 1e-6)
        amperes = float(numpy.abs(volts / impedance))
        ours = coilside.capacitance_uf(current_a=amperes, voltage_v=volts, frequency_hz=hertz)
        yield Point(f"{microfarad:.1f} µF, {volts:.0f} V, {hertz:.0f} Hz", ours, microfarad)


@grid("voltage unbalance", bound=1e-12, source="NEMA MG 1, 14.36 (clause from memory), numpy 2.4.6")
def unbalance(draw):
    for _ in range(POINTS):
        middle = draw.uniform(100, 900)
        volts = [middle * draw.uniform(0.9, 1.1) for _ in range(3)]
        ours = coilside.voltage_unbalance(a_v=volts[0], b_v=volts[1], c_v=volts[2])
        reference = float(numpy.max(numpy.abs(numpy.array(volts) / numpy.mean(volts) - 1)))
        yield Point(" ".join(f"{v:.1f}" for v in volts) + " V", ours, reference)


@grid("insulation at 40 °C", bound=1e-12, kind="rel", source="halving for each 10 K (IEEE 43, from memory), numpy 2.4.6")
def insulation(draw):
    for _ in range(POINTS):
        measured_mohm, winding_c = 10 ** draw.uniform(-1, 5.9), draw.uniform(-20, 120)
        ours = coilside.insulation_at_40c_mohm(measured_mohm=measured_mohm, winding_c=winding_c)
        reference = measured_mohm * float(numpy.exp2((winding_c - 40) / 10))
        yield Point(f"{measured_mohm:.3g} MΩ at {winding_c:.1f} °C", ours, reference)
