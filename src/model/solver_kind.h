/* model/solver_kind.h - who solves the equations. */
#ifndef MODEL_SOLVER_KIND_H
#define MODEL_SOLVER_KIND_H

enum solver_kind { SOLVER_OWN, SOLVER_GSL };

#endif
