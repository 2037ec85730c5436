"""Molar masses against `molmass`, acid baths against stoichiometry and equilibria worked out by `chempy`."""

import math
from collections import defaultdict

import coilside
from chempy import Equilibrium, balance_stoichiometry
from chempy.chemistry import Species
from chempy.equilibria import EqSystem
from gridding import Point, grid
from molmass import Formula

POINTS = 250
ELEMENTS = "H Li B C N O F Na Mg Al Si P S Cl K Ca Ti Cr Mn Fe Ni Cu Zn Br Sr Ag Sn I Ba Pb".split()
CALCIUM_SALTS = {
    "hydrochloric": ("HCl", "CaCl2"),
    "citric": ("C6H8O7", "Ca3(C6H5O7)2"),
    "phosphoric": ("H3PO4", "Ca3(PO4)2"),
    "sulfamic": ("H3NSO3", "Ca(H2NSO3)2"),
}
WATER_MOL_L = 55.4
# Constants of the acids, so that the grid tests the balance and not the constants: phreeqc.dat, and the CRC Handbook from memory.
PKA = {"citric": (3.13, 4.76, 6.40), "phosphoric": (2.168, 7.207, 12.346), "sulfamic": (1.0,)}


def part(draw, depth):
    """Elements with counts, sometimes a bracket."""

    def count():
        return draw.choice(["", str(draw.randint(2, 12))])

    pieces = [draw.choice(ELEMENTS) + count() for _ in range(draw.randint(1, 4))]
    if depth and draw.random() < 0.4:
        pieces.append(f"({part(draw, depth - 1)}){count()}")
    return "".join(pieces)


@grid("molar mass of any formula", bound=5e-4, kind="rel", source="molmass 2026.1.8")
def molar_mass(draw):
    for _ in range(POINTS):
        formula = part(draw, 2)
        yield Point(formula, coilside.molar_mass_g_mol(formula=formula), Formula(formula).mass)


@grid("lime for the whole acid", bound=5e-4, kind="rel", source="chempy 0.10.2, balanced reaction; molmass 2026.1.8")
def complete(draw):
    for _ in range(POINTS):
        acid = draw.choice(list(CALCIUM_SALTS))
        formula, salt = CALCIUM_SALTS[acid]
        balanced, _products = balance_stoichiometry({"CaCO3", formula}, {salt, "CO2", "H2O"})
        volume_l = draw.uniform(1, 200)
        acid_g = draw.uniform(1, 300) * volume_l
        lime_g = acid_g / Formula(formula).mass * balanced["CaCO3"] / balanced[formula] * Formula("CaCO3").mass
        ours = coilside.acid_complete_g_caco3(acid=acid, acid_g=acid_g, volume_l=volume_l)
        yield Point(f"{acid_g:.0f} g {acid} in {volume_l:.0f} l", ours, float(lime_g))


@grid("lime for hydrochloric acid by strength", bound=1e-3, kind="rel", source="chempy 0.10.2, molmass 2026.1.8")
def hydrochloric(draw):
    balanced, _products = balance_stoichiometry({"CaCO3", "HCl"}, {"CaCl2", "CO2", "H2O"})
    for _ in range(POINTS):
        volume_l, mass_fraction, density_kg_m3 = draw.uniform(0.1, 50), draw.uniform(0.01, 0.4), draw.uniform(1000, 1200)
        moles = volume_l * density_kg_m3 * mass_fraction / Formula("HCl").mass
        lime_g = moles * balanced["CaCO3"] / balanced["HCl"] * Formula("CaCO3").mass
        ours = coilside.acid_capacity_g_caco3(
            volume_l=volume_l, mass_fraction=mass_fraction, density_kg_m3=density_kg_m3
        )
        yield Point(f"{volume_l:.2f} l of {mass_fraction:.3f} at {density_kg_m3:.0f} kg/m³", ours, float(lime_g))


def system(acid):
    """An acid in water, for chempy. The composition key 200 counts what all forms of the acid share."""
    protons = len(PKA[acid])
    names = [f"acid less {gone}" for gone in range(protons + 1)]
    species = [
        Species("H2O", composition={0: 0, 1: 2, 8: 1}),
        Species("H+", composition={0: 1, 1: 1}),
        Species("OH-", composition={0: -1, 1: 1, 8: 1}),
    ]
    for gone, name in enumerate(names):
        hydrogen = {1: protons - gone} if gone < protons else {}
        species.append(Species(name, composition={0: -gone, 200: 1, **hydrogen}))
    steps = [Equilibrium({"H2O": 1}, {"H+": 1, "OH-": 1}, 1e-14 / WATER_MOL_L)]
    for before, after, pka in zip(names, names[1:], PKA[acid]):
        steps.append(Equilibrium({before: 1}, {after: 1, "H+": 1}, 10**-pka))
    return EqSystem(steps, species), names


@grid("protons given by an acid", bound=1e-6, source="chempy 0.10.2, equilibria solved for partly neutralised acid")
def protons(draw):
    systems = {acid: system(acid) for acid in PKA}
    for _ in range(POINTS):
        acid = draw.choice(list(PKA))
        balance, names = systems[acid]
        strength = draw.uniform(0.05, 0.3)
        # Up to just before the pH at which our range ends.
        most = {"citric": 2.7, "phosphoric": 1.3, "sulfamic": 0.98}[acid]
        alkali = strength * draw.uniform(0.05, most)
        start = defaultdict(float, {"H2O": WATER_MOL_L, names[0]: strength, "OH-": alkali})
        found, _details, sane = balance.root(start)
        if not sane:
            raise ValueError(f"chempy found no equilibrium for {strength} mol/l {acid} with {alkali} mol/l alkali")
        amounts = dict(zip(balance.substances, found))
        ph = -math.log10(amounts["H+"])
        given = sum(gone * amounts[name] for gone, name in enumerate(names)) / strength
        yield Point(f"{acid} at pH {ph:.3f}", coilside.acid_protons_given(acid=acid, ph=ph), given)
