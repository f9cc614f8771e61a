"""Linear and integer programmes, and HiGHS to solve them: one thread, fixed seed, bounded by nodes, not by time.

All variables are ≥ 0 and the cost is to be least. This is the one place that speaks to the solver.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from highspy import Highs, HighsLp


@dataclass(frozen=True, slots=True)
class Row:
    """least ≤ Σ factor × variable ≤ most."""

    variables: tuple[int, ...]
    factors: tuple[float, ...]
    least: float = -inf
    most: float = inf


@dataclass(frozen=True, slots=True)
class Programme:
    """Costs and upper limits of the variables, and the rows that they must keep."""

    costs: tuple[float, ...]
    limits: tuple[float, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The optimum over fractions: its cost, the variables, and what one unit more of each row would cost."""

    cost: float
    values: tuple[float, ...]
    prices: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Whole:
    """The best found over whole numbers (None where none was), and what no solution costs less than."""

    values: tuple[int, ...] | None
    bound: float
    proved: bool


def solve_relaxed(programme: Programme) -> Relaxed:
    """The optimum over fractions; raises ValueError where there is none."""
    solver = _quiet_solver()
    solver.passModel(_model(programme, whole=False))
    solver.run()
    solution = solver.getSolution()
    if not solution.dual_valid:
        raise ValueError("the linear programme has no optimum")
    cost = solver.getInfo().objective_function_value
    return Relaxed(cost, tuple(solution.col_value), tuple(solution.row_dual))


def solve_whole(programme: Programme, most_nodes: int, start: Sequence[int] | None = None) -> Whole:
    """The best over whole numbers within so many nodes; costs must be whole numbers too.

    `start` is a solution to begin with.
    """
    import highspy

    solver = _quiet_solver()
    solver.setOptionValue("mip_max_nodes", most_nodes)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.99)
    solver.passModel(_model(programme, whole=True))
    if start is not None:
        # Presolve may carry a start over into a smaller model with a wrong cost (HiGHS 1.16), and end there.
        solver.setOptionValue("presolve", "off")
        known = highspy.HighsSolution()
        known.col_value = [float(value) for value in start]
        known.value_valid = True
        solver.setSolution(known)
    solver.run()
    proved = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    found = solver.getInfo().primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible
    values = tuple(round(value) for value in solver.getSolution().col_value) if found else None
    return Whole(values, solver.getInfo().mip_dual_bound, proved)


def _quiet_solver() -> "Highs":
    """HiGHS, set up; as it comes it prints a banner while it is made, and stdout belongs to the command."""
    import highspy

    class Quiet(highspy.Highs):
        def enableCallbacks(self) -> None:  # noqa: N802 (the library's name)
            self.silent()
            super().enableCallbacks()  # type: ignore[no-untyped-call]  # the library tells no types here

    solver = Quiet()  # type: ignore[no-untyped-call]  # nor here
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("random_seed", 0)
    return solver


def _model(programme: Programme, whole: bool) -> "HighsLp":
    import highspy

    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(programme.costs), len(programme.rows)
    model.col_cost_ = np.array(programme.costs, np.float64)
    model.col_lower_ = np.zeros(model.num_col_)
    model.col_upper_ = np.array(programme.limits, np.float64)
    model.row_lower_ = np.array([row.least for row in programme.rows], np.float64)
    model.row_upper_ = np.array([row.most for row in programme.rows], np.float64)
    matrix = model.a_matrix_
    matrix.format_ = highspy.MatrixFormat.kRowwise
    matrix.start_ = np.cumsum([0] + [len(row.variables) for row in programme.rows])
    matrix.index_ = np.array([variable for row in programme.rows for variable in row.variables], np.int32)
    matrix.value_ = np.array([factor for row in programme.rows for factor in row.factors], np.float64)
    if whole:
        model.integrality_ = [highspy.HighsVarType.kInteger] * model.num_col_
    return model
