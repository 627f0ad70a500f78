"""What the pages of the site share: fonts, scripts, and the policy that says what a page may do."""

import base64
import hashlib
from importlib.resources import files as package_files

FONTS = {
    "serif.ttf": ("font_source_serif_pro", "SourceSerifPro-Regular.ttf"),
    "serif-italic.ttf": ("font_source_serif_pro", "SourceSerifPro-It.ttf"),
    "serif-bold.ttf": ("font_source_serif_pro", "SourceSerifPro-Semibold.ttf"),
    "serif-licence.txt": ("font_source_serif_pro", "LICENSE.txt"),
    "sans.ttf": ("font_source_sans_pro", "SourceSansPro-Regular.ttf"),
    "sans-bold.ttf": ("font_source_sans_pro", "SourceSansPro-Semibold.ttf"),
    "sans-licence.txt": ("font_source_sans_pro", "LICENSE.txt"),
}
"""Files of `assets/` that come from the font packages: package, file. The SIL Open Font Licence goes with them."""


def fonts() -> dict[str, bytes]:
    """Read the fonts, by their addresses on the site."""
    return {
        f"assets/{name}": (package_files(package) / "files" / file).read_bytes()
        for name, (package, file) in FONTS.items()
    }


def policy(scripts: tuple[str, ...], *, talks: bool) -> str:
    """Write the content security policy: our own files, and of scripts only those in the page itself, by digest.

    `file:` stands beside `'self'` because a page opened from disk has no origin of its own in every browser. With
    `talks`, a script may fetch from where the page came.
    """
    digests = (base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts)
    return "; ".join(
        (
            "default-src 'none'",
            "style-src 'self' file:",
            "img-src 'self' file: data:",
            "font-src 'self' file:",
            "script-src " + " ".join(f"'sha256-{digest}'" for digest in digests),
            *(("connect-src 'self'",) if talks else ()),
            "base-uri 'none'",
            "form-action 'none'",
        )
    )
