/* frame/solver_kind.h - who solves the equations. */
#ifndef FRAME_SOLVER_KIND_H
#define FRAME_SOLVER_KIND_H

enum solver_kind { SOLVER_OWN, SOLVER_GSL, SOLVER_COUNT };

#endif
