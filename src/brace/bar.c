#include "brace/work.h"
#include "fixing/fastener_input.h"
#include "model/fastening.h"
#include "model/sections.h"

#include <math.h>

/* The thinnest stick with a size that the frame is made of; of equal ones the one of least area. */
int brace_stick(const struct work *work) {
    const struct frame *frame = work->frame;
    int best = -1;
    for (size_t m = 0; m < frame->members.count; m++) {
        const struct stick *stick = &frame->sticks.items[frame->members.items[m].stick];
        if (!stick->has_size || frame->members.items[m].acts_as == ACTS_AS_TIE)
            continue;
        const struct stick *so_far = best < 0 ? NULL : &frame->sticks.items[best];
        if (!so_far || stick->thickness < so_far->thickness ||
            (stick->thickness == so_far->thickness && stick->width < so_far->width))
            best = frame->members.items[m].stick;
    }
    return best >= 0 ? best : frame->members.items[0].stick;
}

/* The default fastening of a brace to what stands at a joint; false where there is none. */
static bool end_fastening(const struct work *work, const struct model_member *brace, int joint,
                          struct fastening *fastening) {
    const struct frame *frame = work->frame;
    if (frame->default_connection < 0 || work->model->host[joint] < 0)
        return false;
    *fastening =
        (struct fastening){.connection = &frame->connections.items[frame->default_connection],
                           .ending = brace,
                           .host = &work->model->members[work->model->host[joint]],
                           .wet = work->model->wet};
    return true;
}

/* How much one end of a brace gives, m/N. */
static double end_give(const struct work *work, const struct model_member *brace, int joint) {
    struct end_springs springs[STIFFNESS_COUNT];
    struct fastening fastening;
    if (!end_fastening(work, brace, joint, &fastening))
        return 0.0;
    fastening_springs(&fastening, springs);
    return isfinite(springs[STIFFNESS_MIDDLE].k[0]) ? 1.0 / springs[STIFFNESS_MIDDLE].k[0] : 0.0;
}

static struct model_member brace_member(const struct work *work, int stick, int from, int to) {
    struct member member = {.from = from, .to = to, .stick = stick, .ends = {-1, -1}};
    struct model_member brace;
    struct lumber lumber = sections_lumber(&work->frame->sticks.items[stick]);
    sections_member(work->frame, &member, &lumber, work->model->wet, &brace);
    return brace;
}

struct bar brace_bar(const struct work *work, int stick, int from, int to) {
    struct model_member brace = brace_member(work, stick, from, to);
    double give = brace.length / (brace.E * brace.A) + end_give(work, &brace, from) +
                  end_give(work, &brace, to);
    return (struct bar){.joints = {from, to}, .stiffness = 1.0 / give};
}

double brace_screws_hold(const struct work *work, int stick, int from, int to) {
    struct model_member brace = brace_member(work, stick, from, to);
    const int joints[2] = {from, to};
    double holds = INFINITY;
    for (int end = 0; end < 2; end++) {
        struct fastening fastening;
        struct fixing fixing;
        if (!end_fastening(work, &brace, joints[end], &fastening) ||
            !fixing_between(&fastening, &fixing))
            return NAN;
        double here = fixing_holds_along(&fixing, DURATION_SEVEN_DAYS);
        if (isnan(here))
            return NAN;
        holds = fmin(holds, here);
    }
    return holds;
}
