#include "frame/frame_check.h"
#include "frame/geometry.h"
#include "frame/point_tree.h"
#include "units/quote.h"

static const double **joint_points(struct reader *reader) {
    const struct frame *frame = reader->frame;
    const double **points = ARENA_ARRAY(reader->arena, const double *, frame->joints.count);
    for (size_t k = 0; k < frame->joints.count; k++)
        points[k] = frame->joints.items[k].at;
    return points;
}

static void tell_too_close(struct reader *reader, int first, int second) {
    const struct joint *joints = reader->frame->joints.items;
    trouble_at(
        reader, joints[second].place,
        arena_print(reader->arena, "joints.%s", plain_text(reader->arena, joints[second].name)),
        "lies within 1 mm of joint %s; use one joint for both",
        quote_text(reader->arena, joints[first].name));
}

bool check_joints_apart(struct reader *reader) {
    size_t count = reader->frame->joints.count;
    const double **points = joint_points(reader);
    int *all = ARENA_ARRAY(reader->arena, int, count);
    for (size_t k = 0; k < count; k++)
        all[k] = (int)k;
    const struct point_tree *tree = point_tree_new(reader->arena, points, all, count);
    bool apart = true;
    for (int k = 1; k < (int)count && !told_enough(reader); k++) {
        int before = point_tree_find(tree, points[k], points[k], SAME_PLACE, k);
        if (before < 0)
            continue;
        tell_too_close(reader, before, k);
        apart = false;
    }
    return apart;
}

void check_joints_reached(struct reader *reader) {
    const struct frame *frame = reader->frame;
    size_t joint_count = frame->joints.count, left = 0;
    char *reached = ARENA_ARRAY(reader->arena, char, joint_count);
    for (size_t k = 0; k < frame->members.count; k++) {
        reached[frame->members.items[k].from] = 1;
        reached[frame->members.items[k].to] = 1;
    }
    int *open = ARENA_ARRAY(reader->arena, int, joint_count);
    for (size_t k = 0; k < joint_count; k++)
        if (!reached[k])
            open[left++] = (int)k;
    const double **points = joint_points(reader);
    struct point_tree *tree = point_tree_new(reader->arena, points, open, left);
    for (size_t k = 0; k < frame->members.count && left > 0; k++) {
        const struct member *member = &frame->members.items[k];
        point_tree_take(tree, points[member->from], points[member->to], SAME_PLACE, reached);
    }
    for (size_t k = 0; k < joint_count && !told_enough(reader); k++)
        if (!reached[k])
            trouble_at(reader, frame->joints.items[k].place,
                       arena_print(reader->arena, "joints.%s",
                                   plain_text(reader->arena, frame->joints.items[k].name)),
                       "no stick reaches this joint; move it onto a member or leave it out");
}

void check_hosts(struct reader *reader) {
    const struct frame *frame = reader->frame;
    for (size_t k = 0; k < frame->joints.count && !told_enough(reader); k++) {
        const struct joint *joint = &frame->joints.items[k];
        if (joint->host >= 0 && !frame_joint_on_member(frame, (int)k, joint->host))
            trouble_at(reader, joint->place,
                       arena_print(reader->arena, "joints.%s.host",
                                   plain_text(reader->arena, joint->name)),
                       "member %s neither ends here nor runs through here",
                       quote_text(reader->arena, frame->members.items[joint->host].name));
    }
}

void check_member_pairs(struct reader *reader) {
    enum { MOST_REMARKS = 20 };
    const struct frame *frame = reader->frame;
    struct name_index pairs = {0};
    int *members = ARENA_ARRAY(reader->arena, int, frame->members.count);
    int remarks = 0;
    for (size_t k = 0; k < frame->members.count && remarks < MOST_REMARKS; k++) {
        const struct member *member = &frame->members.items[k];
        bool up = member->from < member->to;
        const char *pair = arena_print(reader->arena, "%d %d %d", up ? member->from : member->to,
                                       up ? member->to : member->from, member->stick);
        int before = name_index_find(&pairs, pair);
        if (before < 0) {
            members[name_index_add(reader->arena, &pairs, pair)] = (int)k;
            continue;
        }
        remarks++;
        caution(reader, "Members %s and %s are the same stick between the same joints.",
                frame->members.items[members[before]].name, member->name);
    }
}
