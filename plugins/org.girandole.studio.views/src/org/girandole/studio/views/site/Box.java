package org.girandole.studio.views.site;

/** A part of a drawing. */
record Box(double left, double top, double right, double bottom) {
    double width() {
        return Math.max(1, right - left);
    }

    double height() {
        return Math.max(1, bottom - top);
    }

    double centreX() {
        return (left + right) / 2;
    }

    boolean meets(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    boolean holds(Box other) {
        return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
    }

    Box movedTo(double x, double y) {
        return new Box(x, y, x + right - left, y + bottom - top);
    }
}
