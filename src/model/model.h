/* model/model.h - the piece idealised: bars and cuts, one frame for each carry model, weights.
 * The only place that knows both the piece and the frame; knows no load standard.
 *
 * Two carry models, always: in `armature alone` the armature carries everything wherever there is
 * one and the bronze is weight and sail; in `together` the two share one axial strain, curvature,
 * twist and shear strain. Where there is no armature the bronze carries all in both. */
#ifndef TT_MODEL_MODEL_H
#define TT_MODEL_MODEL_H

#include "frame/frame.h"
#include "piece/ledger.h"

enum { TT_ALONE, TT_TOGETHER, TT_MODELS };
extern const char *const tt_model_name[TT_MODELS]; /* "armature alone", "together" */

/** Weight patterns of this version: the nominal wall, all high, all low. */
enum { TT_NOMINAL, TT_HEAVY, TT_LIGHT, TT_PATTERNS };
extern const char *const tt_pattern_name[TT_PATTERNS];

/** A bar of the frame: a stretch of a segment. */
typedef struct {
    size_t segment;
    double x0, x1; /* fractions of the segment */
} tt_stretch;

/** What loads act on: the Gauss point of a bar. index = bar * TT_BAR_POINTS + point. */
typedef struct {
    size_t segment;
    double x;           /* fraction of the segment */
    double length;      /* m that the point stands for */
    tt_vec3 at;         /* m, global */
    tt_axes axes;       /* local axes of the cut there */
    tt_outline outline; /* what the wind meets: the bronze's outside, or the bare armature */
    bool bare;          /* bare armature */
    tt_section shell,
        core; /* bronze at the nominal wall, armature as bought; nil where there is none */
    double bronze[TT_PATTERNS]; /* kg/m */
    double armature;            /* kg/m */
} tt_strip;

/** What a part takes of the section forces of a cut, all about the axis: factors on N, Vy, Vz, T,
 * My, Mz. Its shear forces are read in two ways, by shear strain and by curvature. */
typedef struct {
    double of[6][6];   /* by the common strains */
    double bent[2][6]; /* Vy and Vz as the part's moments change along the limb */
    bool coupled;      /* some force of the part depends on another than its own of the whole */
} tt_share;

/** The part's forces; each shear force by the larger of its two readings (decision). */
tt_forces tt_shared(const tt_share *share, const tt_section *part, const tt_forces *whole);
/** The factors that force i of the part takes. */
const double *tt_share_row(const tt_share *share, int i, const tt_forces *whole);

/** A cut along a limb: where forces are told and parts are judged. */
typedef struct {
    size_t segment;
    double x; /* fraction of the segment; 0 just behind `from`, 1 just before `to` */
    size_t bar;
    double bar_x;              /* fraction of the bar */
    tt_frame_cut on_bar;       /* the same, for the frame */
    double cos_turn, sin_turn; /* of its axes against the bar's, about x */
    tt_vec3 at;
    tt_axes axes;
    tt_section bronze;        /* nominal wall: mass, stiffness, shares */
    tt_section bronze_weak;   /* low wall: resistance */
    tt_section armature;      /* as bought: stiffness, shares */
    tt_section armature_weak; /* less loss, by the wall factor: resistance */
    double bore;              /* m, inside the high wall; 0 without a hollow bronze */
    tt_share share_bronze;    /* in `together`, E of the bronze high */
    tt_share share_armature;  /* E of the bronze low */
    bool seam_possible;  /* a limb starts at or joins another here, the alloy changes, or the file
                            names a seam; not where it says that there is none */
    const tt_seam *seam; /* what the file says of it; NULL: nothing */
    bool neck; /* narrower than its neighbours along the limb, or a limb's end at a stand or at
                  something stouter */
} tt_cut;

typedef struct {
    double bronze, armature, lumps; /* kg */
} tt_weight;

typedef struct {
    const tt_piece *piece;
    tt_pool pool;
    TT_LIST(tt_stretch) bars;
    TT_LIST(tt_cut) cuts; /* segment by segment, ascending x */
    tt_strip *strips;     /* [bars.n * TT_BAR_POINTS] */
    size_t *first_cut;    /* [segments + 1] */
    size_t *first_bar;    /* [segments + 1] */
    size_t nodes;         /* points come first, in order, then the inner ends of bars */
    size_t *first_inner;  /* [segments + 1] first inner node of a segment */
    tt_frame *frame[TT_MODELS];
    double (*segment_bronze)[TT_PATTERNS]; /* [segments] kg */
    double *segment_armature;              /* [segments] kg */
    const tt_ledger *ledger;               /* NULL: nothing was weighed */
    tt_weight weight[TT_PATTERNS];
    tt_vec3 centre[TT_PATTERNS]; /* m, centre of mass */
} tt_model;

/** Builds bars, cuts, weights and both frames, and factors them. On TT_E_MECHANISM the fault names
 *  a node; tt_model_node_words says it in the piece's words. */
tt_status tt_model_new(const tt_piece *piece, tt_model **out, tt_frame_fault *fault);
tt_model *tt_model_free(tt_model *model);

/** "the beak", or "toe-hock, 120 mm from toe"; in the pool. */
const char *tt_model_node_words(const tt_model *model, tt_pool *pool, size_t node);

/** From the axis to the centroid of a part of a strip, m, global; the bronze of every pattern is
 * taken to lie where that of the nominal wall does. */
tt_vec3 tt_part_lever(const tt_strip *strip, const tt_section *part);

/** A cut anywhere along a segment (marks for seam and neck are not set). */
tt_cut tt_model_cut_at(const tt_model *model, size_t index, double x);

/** A cut's forces from the frame's bar axes into the cut's own (turned) axes. */
tt_forces tt_model_cut_forces(const tt_model *model, const tt_cut *cut, const tt_frame_state *state,
                              const tt_frame_load *load, int carry);

/** Section forces in the axes of a cut's bar brought into the cut's own. */
tt_forces tt_model_into_cut(const tt_cut *cut, const double f[TT_SIX]);

/** The two nodes of a bar of the frames. */
void tt_model_bar_nodes(const tt_model *model, size_t bar, size_t *from, size_t *to);

/** Conventional gravity, m/s2 (BIPM SI brochure). */
#define TT_GRAVITY 9.80665

/** Mass of a lump in a pattern, kg. */
double tt_lump_mass(const tt_lump *lump, int pattern);

/** Total mass of a pattern, kg. */
double tt_model_mass(const tt_model *model, int pattern);

/** The same, but low and high of a piece that was weighed as a whole are those of the scales: its
 *  parts stay as open as they are. */
double tt_model_mass_told(const tt_model *model, int pattern);

/** Bronze of a segment by its outlines and walls, kg; and where its weight is from. */
double tt_model_estimate(const tt_model *model, size_t segment);
tt_weight_source tt_model_weight_source(const tt_model *model, size_t segment);

#endif
