#include <curve/small_qr.h>
#include <Eigen/QR>
#include <cmath>

namespace ohmkin::curve {

template <int P, int Rows, int MaxRows>
SmallFit<P> solved(SmallTable<P, Rows, MaxRows>& xy) {
  const Eigen::Matrix<double, 1, P> norms = xy.template leftCols<P>().colwise().norm();
  const Eigen::HouseholderQR<Eigen::Ref<SmallTable<P, Rows, MaxRows>>> qr(xy);  // in place

  SmallFit<P> out;
  out.triangle = xy.template topLeftCorner<P, P>();
  const auto& r = out.triangle;
  out.sound = std::isfinite(xy(P, P));
  for (int k = 0; k < P; ++k) out.sound = out.sound && std::abs(r(k, k)) > kLeastIndependent * norms[k];
  if (!out.sound) return out;
  const Eigen::Matrix<double, P, 1> head = xy.col(P).template head<P>();
  out.p = r.template triangularView<Eigen::Upper>().solve(head);
  out.sumOfSquares = xy(P, P) * xy(P, P);
  out.explained = head.squaredNorm();
  return out;
}

template SmallFit<2> solved<2>(SmallTable<2, kShortRows, kShortRows>&);
template SmallFit<3> solved<3>(SmallTable<3, kShortRows, kShortRows>&);
template SmallFit<4> solved<4>(SmallTable<4, kShortRows, kShortRows>&);
template SmallFit<2> solved<2>(SmallTable<2, Eigen::Dynamic, kStackRows>&);
template SmallFit<3> solved<3>(SmallTable<3, Eigen::Dynamic, kStackRows>&);
template SmallFit<4> solved<4>(SmallTable<4, Eigen::Dynamic, kStackRows>&);
template SmallFit<2> solved<2>(SmallTable<2, Eigen::Dynamic, Eigen::Dynamic>&);
template SmallFit<3> solved<3>(SmallTable<3, Eigen::Dynamic, Eigen::Dynamic>&);
template SmallFit<4> solved<4>(SmallTable<4, Eigen::Dynamic, Eigen::Dynamic>&);

}  // namespace ohmkin::curve
