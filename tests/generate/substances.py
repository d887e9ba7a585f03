"""Write data/substances/<id>.json from the equations that CoolProp 8.0.0 (MIT) carries.

Run from the repository root with a Python that has CoolProp 8.0.0:

    python tests/generate/substances.py [--check]

The coefficients are those of the cited papers, transcribed unchanged, except that CoolProp's
constants for a reference state of enthalpy and entropy are left out: ours is set elsewhere.
--check writes nothing and fails when a committed file differs.
"""

import json
import re
import sys
from pathlib import Path

import CoolProp
from CoolProp.CoolProp import get_fluid_param_string

VERSION = "8.0.0"
TARGET = Path(__file__).resolve().parents[2] / "data" / "substances"

# id, CoolProp's name, chemical name
SUBSTANCES = [
    ("R-12", "R12", "dichlorodifluoromethane"),
    ("R-13I1", "R13I1", "trifluoroiodomethane"),
    ("R-22", "R22", "chlorodifluoromethane"),
    ("R-32", "R32", "difluoromethane"),
    ("R-115", "R115", "chloropentafluoroethane"),
    ("R-124", "R124", "2-chloro-1,1,1,2-tetrafluoroethane"),
    ("R-125", "R125", "pentafluoroethane"),
    ("R-134a", "R134a", "1,1,1,2-tetrafluoroethane"),
    ("R-142b", "R142b", "1-chloro-1,1-difluoroethane"),
    ("R-143a", "R143a", "1,1,1-trifluoroethane"),
    ("R-152a", "R152A", "1,1-difluoroethane"),
    ("R-218", "R218", "octafluoropropane"),
    ("R-227ea", "R227EA", "1,1,1,2,3,3,3-heptafluoropropane"),
    ("R-290", "n-Propane", "propane"),
    ("R-600", "n-Butane", "butane"),
    ("R-600a", "IsoButane", "2-methylpropane (isobutane)"),
    ("R-601a", "Isopentane", "2-methylbutane (isopentane)"),
    ("R-744", "CO2", "carbon dioxide"),
    ("R-1234yf", "R1234yf", "2,3,3,3-tetrafluoroprop-1-ene"),
    ("R-1234ze(E)", "R1234ze(E)", "trans-1,3,3,3-tetrafluoroprop-1-ene"),
    ("R-1270", "Propylene", "propene (propylene)"),
]


def bibliography():
    """Entries of CoolProp's bibliography as {key: {field: text}}."""
    text = (Path(CoolProp.__file__).parent / "CoolPropBibTeXLibrary.bib").read_text("utf-8")
    entries = {}
    for match in re.finditer(r"^@(\w+)\s*\{\s*([^,\s]+)\s*,(.*?)^\}", text, re.S | re.M):
        fields = {}
        for field in re.finditer(r"(\w+)\s*=\s*(\{(?:[^{}]|\{(?:[^{}]|\{[^{}]*\})*\})*\}|\"[^\"]*\"|[\w.]+)", match[3]):
            fields[field[1].lower()] = plain(field[2])
        entries[match[2]] = {"kind": match[1].lower(), **fields}
    return entries


ACCENTS = {'\\"u': "ü", '\\"o': "ö", '\\"a': "ä", "\\'e": "é", "\\'i": "í", "\\`e": "è", "\\ss": "ß", "\\v{r}": "ř", "\\'a": "á"}


def plain(value):
    """LaTeX to plain text, as far as these entries need it."""
    text = re.sub(r"\{(\w)\}", r"\1", value.strip().strip('"'))
    for tex, letter in ACCENTS.items():
        text = text.replace("{" + tex + "}", letter).replace(tex, letter)
    text = text.replace("--", "–").replace("\\&", "&").replace("~", " ")
    text = re.sub(r"\\\w+\s*", "", text).replace("{", "").replace("}", "").replace("$", "")
    return re.sub(r"\s+", " ", text).strip()


def citation(entry):
    authors = "; ".join(a.strip() for a in entry["author"].split(" and "))
    parts = [authors, entry["title"]]
    where = entry.get("journal") or entry.get("booktitle") or entry.get("publisher") or entry.get("note")
    if where:
        volume = " ".join(filter(None, [entry.get("volume"), f"({entry['number']})" if "number" in entry else ""]))
        pages = entry.get("pages")
        parts.append(" ".join(filter(None, [where, volume])) + (f", {pages}" if pages else ""))
    return ". ".join(parts) + f" ({entry['year']})."


def ideal(terms, reducing):
    out = {"a1": 0, "a2": 0, "logTau": 0}
    for term in terms:
        kind = term["type"].removeprefix("IdealGasHelmholtz")
        if kind == "Lead":
            out["a1"], out["a2"] = term["a1"], term["a2"]
        elif kind == "LogTau":
            out["logTau"] = term["a"]
        elif kind == "Power":
            out["power"] = {"n": term["n"], "t": term["t"]}
        elif kind == "PlanckEinstein":
            out["planckEinstein"] = {"n": term["n"], "t": term["t"]}
        elif kind in ("CP0Constant", "CP0PolyT"):
            assert term["Tc"] == reducing, term
            heat = out.setdefault("heatCapacity", {"c": [], "t": [], "fromK": term["T0"]})
            assert heat["fromK"] == term["T0"]
            heat["c"] += [term["cp_over_R"]] if kind == "CP0Constant" else term["c"]
            heat["t"] += [0] if kind == "CP0Constant" else term["t"]
        elif kind != "EnthalpyEntropyOffset":
            raise ValueError(f"ideal term {kind} is not handled")
    assert -1 not in out.get("heatCapacity", {}).get("t", [])
    return out


def whole(value):
    """1.0 as 1: exponents are whole numbers in most equations."""
    return int(value) if float(value).is_integer() else value


NAMES = {
    "Power": ("power", ["n", "d", "t", "l"]),
    "Gaussian": ("gaussian", ["n", "d", "t", "eta", "epsilon", "beta", "gamma"]),
    "Lemmon2005": ("exponential", ["n", "d", "t", "l", "m"]),
    "NonAnalytic": ("nonAnalytic", ["n", "a", "b", "beta", "A", "B", "C", "D"]),
}


def residual(terms):
    out = {}
    for term in terms:
        name, keys = NAMES[term["type"].removeprefix("ResidualHelmholtz")]
        extra = set(term) - set(keys) - {"type"}
        assert not extra, extra
        group = out.setdefault(name, {key: [] for key in keys})
        for key in keys:
            assert len(term[key]) == len(term["n"])
            group[key] += [whole(v) for v in term[key]]
        assert all(isinstance(v, int) for v in group.get("d", []) + group.get("l", []))
    return out


def substance(identity, name, chemical, books):
    fluid = json.loads(get_fluid_param_string(name, "JSON"))[0]
    eos = fluid["EOS"][0]
    state = eos["STATES"]
    # Where CoolProp's own critical point is only its numerical estimate of the equation's reducing
    # point, the published one is the reducing point; R-134a alone reduces by another temperature.
    critical = fluid["STATES"]["critical"]
    if abs(critical["T"] / state["reducing"]["T"] - 1) < 3e-5:
        critical = state["reducing"]
    book = books[eos["BibTeX_EOS"]]
    source = {"citation": citation(book)}
    if "doi" in book:
        source["doi"] = book["doi"]
    source["mark"] = "secondary"
    source["transcribedFrom"] = f"CoolProp {VERSION}, fluid {name}, equation {eos['BibTeX_EOS']} (MIT licence)"
    reducing = state["reducing"]
    return {
        "id": identity,
        "chemicalName": chemical,
        "cas": fluid["INFO"]["CAS"],
        "molarMass": eos["molar_mass"],
        "gasConstant": eos["gas_constant"],
        "acentricFactor": eos["acentric"],
        "reducing": {"temperatureK": reducing["T"], "densityMolPerM3": reducing["rhomolar"]},
        "critical": {
            "temperatureK": critical["T"],
            "pressurePa": critical["p"],
            "densityMolPerM3": critical["rhomolar"],
        },
        "triple": {"temperatureK": eos["Ttriple"]},
        "valid": {
            "minimumTemperatureK": state["sat_min_liquid"]["T"],
            "maximumTemperatureK": eos["T_max"],
            "maximumPressurePa": eos["p_max"],
        },
        "ideal": ideal(eos["alpha0"], reducing["T"]),
        "residual": residual(eos["alphar"]),
        "source": source,
    }


def written(data):
    """One line a list, so that a change of a coefficient is a change of one line."""
    text = json.dumps(data, indent=2, ensure_ascii=False)
    return re.sub(r"\[\s+([^\[\]]*?)\s+\]", lambda m: "[" + re.sub(r"\s+", " ", m[1]) + "]", text) + "\n"


def main():
    if CoolProp.__version__ != VERSION:
        sys.exit(f"needs CoolProp {VERSION}, found {CoolProp.__version__}")
    books = bibliography()
    stale = []
    for identity, name, chemical in SUBSTANCES:
        text = written(substance(identity, name, chemical, books))
        path = TARGET / f"{identity}.json"
        if "--check" in sys.argv[1:]:
            if not path.exists() or path.read_text("utf-8") != text:
                stale.append(path.name)
        else:
            path.write_text(text, "utf-8")
    if stale:
        sys.exit(f"differ from CoolProp {VERSION}: {', '.join(stale)}")
    print(f"{len(SUBSTANCES)} substances {'agree' if '--check' in sys.argv[1:] else 'written'}")


main()
