"""A second solver on the same program: SCIP, which shares no code with the first."""

import math
from collections.abc import Mapping

from pyscipopt import Model, Variable, quicksum

from paradestate.solve.program import Ending, Program, Solution

SECONDS = 60.0

NEARLY_NOUGHT = 1e-6

ENDINGS: Mapping[str, Ending] = {
    "optimal": Ending.OPTIMAL,
    "infeasible": Ending.INFEASIBLE,
    # every variable and so every cost is bounded
    "inforunbd": Ending.INFEASIBLE,
    "timelimit": Ending.STOPPED,
}


def solved_again(program: Program, *, seconds: float = SECONDS) -> Solution:
    """What the second solver says of a program as it stands, written for it from the start."""
    model = Model()
    model.hideOutput()
    model.setParam("limits/time", seconds)
    variables = _write(program, model)
    model.optimize()
    ending = ENDINGS[model.getStatus()]
    if not model.getNSols():
        return Solution(ending=ending, values={}, bound=0)
    return Solution(
        ending=ending,
        values={number: round(model.getVal(each)) for number, each in enumerate(variables)},
        bound=math.ceil(model.getDualbound() - NEARLY_NOUGHT),
    )


def _write(program: Program, model: Model) -> list[Variable]:
    """Writes a program into a model; returns the variables in the order of their numbers."""
    # What a program holds is nobody's business but the first solver's, and so the second's.
    bounds = zip(program._most, program._whole, strict=True)  # noqa: SLF001
    variables = [model.addVar(vtype="I" if whole else "C", lb=0, ub=most) for most, whole in bounds]
    nought = model.addVar(lb=0, ub=0)
    for row in program._rows:  # noqa: SLF001
        # With nought in it a row without terms is a row as well.
        total = nought + quicksum(factor * variables[each] for each, factor in row.terms.items())
        if row.least is not None:
            model.addCons(total >= row.least)
        if row.most is not None:
            model.addCons(total <= row.most)
    cost = program._cost  # noqa: SLF001
    model.setObjective(quicksum(factor * variables[each] for each, factor in cost.items()))
    return variables
