"""Photographs drawn for tests and benches: noise with the spectrum of natural scenes, edges, a finned part and a sensor's grain.

No picture of anything real. The same seed gives the same picture.
"""

import numpy as np
from PIL import Image


def scene(seed: int, width: int = 4000, height: int = 3000) -> Image.Image:
    """A scene in colour. Its fine structure shrinks with its size, as with a camera of fewer pixels."""
    draw = np.random.default_rng(seed)
    brightness = 110 + 38 * _clouds(draw, width, height, 1.15)
    down, across = np.mgrid[0:height, 0:width].astype(np.float32)
    fins = np.sin(across * 2 * np.pi / (17 + seed % 5)) * 40
    brightness += fins * ((across > width * 0.2) & (across < width * 0.7) & (down > height * 0.3) & (down < height * 0.8))
    for _ in range(25):
        left, top = draw.uniform(0, width), draw.uniform(0, height)
        half_width, half_height = draw.uniform(0.012, 0.125, 2) * width
        box = (np.abs(across - left) < half_width) & (np.abs(down - top) < half_height)
        brightness[box] += draw.uniform(-50, 50)
    colours = [14 * _clouds(draw, width, height, 1.6), 0, 14 * _clouds(draw, width, height, 1.6)]
    picture = np.stack([brightness + colour for colour in colours], axis=-1)
    for axis in (0, 1):  # a lens
        picture = 0.25 * np.roll(picture, 1, axis) + 0.5 * picture + 0.25 * np.roll(picture, -1, axis)
    picture += draw.standard_normal(picture.shape, dtype=np.float32) * 2.2
    return Image.fromarray(np.clip(picture, 0, 255).astype(np.uint8))


def _clouds(draw, width, height, power):
    """Noise whose amplitude falls with frequency to that power (natural scenes: about 1, Field 1987)."""
    frequency = np.hypot(np.fft.fftfreq(height)[:, None], np.fft.rfftfreq(width)[None, :])
    frequency[0, 0] = 1
    spectrum = np.fft.rfft2(draw.standard_normal((height, width))) / frequency**power
    spectrum[0, 0] = 0
    clouds = np.fft.irfft2(spectrum, s=(height, width))
    return (clouds / clouds.std()).astype(np.float32)
