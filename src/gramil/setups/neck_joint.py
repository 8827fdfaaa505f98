"""The set-up for cutting the neck's joint, in the neck and in the body's block."""

from gramil import names as n
from gramil.reference import says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, skipped

OWNS = ("setup_",)


def setup_neck_joint(foot_there: bool) -> Setup:
    """Cut the neck's joint: the heel's end at its angle, and a joint that the block has room for.

    Method: both halves from one template; what kind of joint it is, is the maker's to choose.
    Source: common practice.
    """
    if foot_there:
        return skipped("neck-joint", "Cut the neck joint", 300, "the sides are let into the neck's heel")
    return Setup(
        "neck-joint",
        "Cut the neck joint",
        300,
        (
            BigFigure(
                n.neck_angle_target,
                "Heel's end off square to the neck's face, head back",
                says("± {}", n.limit_tolerance_angle),
                "bevel, protractor",
            ),
            BigFigure(
                n.neck_heel_depth,
                "Heel, from the joint with the board to its cap",
                "or more",
                "rule",
            ),
            BigFigure(n.heel_wedge, "So its cap comes off square by", says("± {}", n.limit_tolerance_height), "square"),
            BigFigure(
                n.body_neck_block,
                "The block that the joint goes into, along the centreline",
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
            BigFigure(n.body_neck_block_width, "The block, across", says("± {}", n.limit_tolerance_outline), "rule"),
        ),
        (
            "Tenon, dovetail or a bolted butt: the joint's own sizes are yours to choose, and are not worked out here.",
            says(
                "Leave wood round it: of {} along and {} across, what is cut away carries nothing.",
                n.body_neck_block,
                n.body_neck_block_width,
            ),
            "Make both templates from one, and write on each which side is up and which goes to the neck.",
            "Score the lines on heel and sides with a knife before any cutter comes near: the show faces tear first.",
            "Cut the block's half first, the body face up in its cradle; then the neck's, a hair full, to be fitted.",
            "Saw the heel's end to the angle from the neck's face, never from its back, and leave the line.",
        ),
        "Both halves in offcuts first: the one slides into the other by hand and draws up, and their centrelines lie "
        "in "
        "one line under a straightedge. A template turned over shows here.",
        ("knife", "router", "hand saw", "edge tools"),
        (
            "router with a template and its collar or bearing, saw, chisels",
            says("neck angle {}; the neck's own face at {}", n.neck_angle_target, n.neck_angle_face),
        ),
        on=stuff("neck", "blocks", "top", "sides"),
    )
